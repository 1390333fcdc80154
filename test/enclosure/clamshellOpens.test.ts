import type { Assembly } from "../../src/enclosure/assembly";
import type { PlacedPart } from "../../src/enclosure/placedPart";
import { extent, X, Y, Z, type Cuboid } from "../../src/enclosure/space";
import { inEveryStructure } from "./inEveryStructure";
import { book, enclosed } from "./sizing";
import { along, apart, carried, section, TOUCHING } from "./swings";

/**
 * A clamshell seen from its head, swung open as a reader opens it: the back board lies still with the small tray; the
 * front board with the large tray turns a quarter about the upright spine, then both turn a quarter down to the table. The covering of a joint is a link as long as the joint, from the outer
 * edge of the board to the outer edge of the spine.
 *
 *       front board                  closed: board, link, spine, link, board fold round the trays
 *       __________
 *      /                             link: from (0, -q) to (-stand-off, 0), y up the closed spine
 *     | spine
 *      \__________
 *       back board
 */
const STEPS = 60;
/** A quarter turn. A constant: in a test every use of a global name is a slow look-up. */
const QUARTER = Math.PI / 2;

test("the worked example opens without meeting itself", () => {
  opens(enclosed(book(300, 210, 40), "clamshell box", "construction=flanged base; through=side"));
});

test("a joint at the least that is allowed still opens", () => {
  const least = Math.hypot(2, 3);
  opens(enclosed(book(300, 210, 40), "clamshell box", `joint=${least + 1e-9} mm`));
});

test("a joint narrower than that would have met: the check can fail", () => {
  const box = enclosed(book(300, 210, 40), "clamshell box");
  const narrow = { ...box, cover: { ...box.cover!, joint: Math.hypot(2, 2.8) }, parts: box.parts.map(moveSpine) };
  expect(() => opens(narrow)).toThrow("meet");
});

/** The spine nearer than its joint allows, standing off by 2.8 where board and two coverings take 3. */
function moveSpine(part: PlacedPart): PlacedPart {
  if (part.name !== "case spine") return part;
  const { min, max } = part.panels[0]!;
  const by = -2.8 - min[X];
  return { ...part, panels: [{ min: [min[0] + by, min[1], min[2]], max: [max[0] + by, max[1], max[2]] }] };
}

inEveryStructure("clamshell box", "opens", 2, opens);

const MOVERS = ["front board", "large tray", "fore-edge wall"];

function opens(box: Assembly): void {
  const { boardCaliper: q, joint: j, covering: c } = box.cover!;
  const panels = (name: string, tray = "") =>
    box.parts.find((part) => part.name === name && part.tray === tray)!.panels;
  const [back, front] = panels("case board") as [Cuboid, Cuboid];
  const [spine] = panels("case spine") as [Cuboid];
  const small = box.trays.find(({ name }) => name === "small")!.outside;
  const large = box.trays.find(({ name }) => name === "large")!;
  const foreEdge = panels("fore-edge wall", "large")[0]!;
  const floor = panels("base", "large")[0]!;

  const fixed = [section(back, c), section(small, c)];
  const moving = [section(front, c), section(floor, c), section(foreEdge, c)];
  // At the head the large tray shows its whole wall, and the small tray is not there.
  const wall = section(large.outside, c);
  const beside = extent(large.inside, Y) - extent(small, Y) - 4 * c;
  if (beside < -TOUCHING) throw new Error("head walls meet");

  const outerFace = spine.min[X];
  const foot = back.max[Z];
  const rest = Math.asin(q / j);
  for (let step = 0; step <= STEPS; step++) {
    const open = step / STEPS;
    const [folded, upright] = open < 1 / 2 ? [1 - 2 * open, 1] : [0, 2 - 2 * open];
    // Angles from the direction away from the trays (-x), turning down as the case opens.
    const link = rest * upright;
    const spineAngle = QUARTER * upright;
    const near = along([0, foot - q], j, link);
    const placeSpine = carried([outerFace, foot], near, spineAngle - QUARTER);
    const far = along(near, extent(spine, Z), spineAngle);
    const end = along(far, j, spineAngle + (QUARTER - rest) * folded);
    const placeFront = carried([0, front.max[Z]], end, spineAngle + QUARTER * folded - 2 * QUARTER);
    const spineOutline = section(spine, c).map(placeSpine);
    const movers = moving.map((outline) => outline.map(placeFront));
    const wallOutline = wall.map(placeFront);
    for (const still of fixed) {
      apart(still, spineOutline, "spine", open);
      movers.forEach((mover, index) =>
        apart(still, mover, `${still === fixed[0] ? "back board" : "small tray"} and ${MOVERS[index]}`, open),
      );
    }
    movers.forEach((mover) => apart(spineOutline, mover, "spine and front", open));
    apart(section(back, c), wallOutline, "head wall", open);
    apart(spineOutline, wallOutline, "spine and head wall", open);
  }
}
