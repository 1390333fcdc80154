import { coveringParts } from "../../src/covering/partList";
import type { Assembly, Case, Tray } from "../../src/enclosure/assembly";
import type { Blank } from "../../src/enclosure/blank";
import type { Part } from "../../src/enclosure/part";
import type { Item } from "../../src/enclosure/restingItem";
import { extent, X, Y, Z } from "../../src/enclosure/space";
import type { SettledSettings } from "../../src/settings/schema";
import { assemblyOf, type Structure } from "../enclosure/everyEnclosure";
import { book } from "../enclosure/sizing";

const ITEMS = [book(300, 210, 40), book(320, 240, 150), book(120, 90, 60)];

const DRESSES: readonly Partial<SettledSettings>[] = [
  {},
  { liningOrder: "before" },
  { liningOrder: "after", insideTurn: 20 },
  { coverStyle: "one piece", liningOrder: "before" },
  { coverStyle: "one piece", insideTurn: 12 },
  { covering: "none", liningOrder: "after" },
  { covering: "none" },
];

/** Pieces that lie within a face are rounded down and lie in its middle: this much of an edge is not looked at. */
const EDGE = 1.01;
const POINTS = 9;

/** Every visible inside face is painted by the pieces that lie on it: none is bare, none twice beyond turn-ins and laps. */
export function leavesNothingBare(structures: readonly Structure[]): void {
  test("every visible inside face of every structure is covered or lined, and twice at turn-ins alone", () => {
    const seen = structures.flatMap((structure) =>
      DRESSES.flatMap((dress) => ITEMS.map((item) => lookInside(structure, dress, item))),
    );
    expect(seen.reduce((sum, faces) => sum + faces, 0)).toBeGreaterThan(structures.length);
  });

  test("a wall that neither covering nor lining reaches is seen as bare: the check can fail", () => {
    const tray = structures.find(({ kind }) => kind.coverings.includes("side wall lining"));
    if (tray === undefined) return;
    const look = () => lookInside(tray, { lining: "none", covering: undefined, insideTurn: 20 }, ITEMS[0]!);
    expect(look).toThrow("is bare");
  });
}

/** @returns how many faces were looked at */
function lookInside(structure: Structure, dress: Partial<SettledSettings>, item: Item): number {
  const settings: SettledSettings = { ...structure.settings, ...dress };
  const assembly = assemblyOf(structure.kind, item, settings);
  const blanks = assembly?.kind.blanks(assembly, settings) ?? [];
  // Bare board or card by design, or a case alone.
  if (assembly === undefined || !blanks.some(({ lines }) => lines !== undefined)) return 0;
  const faces = facesOf(assembly, blanks, settings);
  const where = `${structure.kind.name} ${structure.text} ${JSON.stringify({ ...dress, ...item })}`;
  for (const face of faces) lookAt(face, where, settings);
  besideTheTrays(assembly, blanks, settings);
  return faces.length;
}

interface Rectangle {
  readonly from: readonly [number, number];
  readonly to: readonly [number, number];
}

/** An inside face, measured from one corner: along an edge, and away from the floor or across it. */
interface Face {
  readonly name: string;
  readonly size: readonly [number, number];
  readonly covered: readonly Rectangle[];
  readonly linings: readonly Rectangle[];
}

function facesOf(assembly: Assembly, blanks: readonly Blank[], settings: SettledSettings): readonly Face[] {
  const parts = coveringParts(assembly, settings);
  return assembly.trays
    .filter((tray) => tray.filled !== true)
    .flatMap((tray) => {
      const own = parts.filter((part) => part.tray === tray.name);
      const cover = blanks.find(
        ({ tray: of, name }) =>
          of === tray.name && ["wall strip", "three-wall strip", "one-piece blank"].includes(name),
      );
      if (tray.mouth !== undefined) return sleeveFaces(tray, own);
      const front = blanks.find(({ tray: of, name }) => of === tray.name && name === "front covering");
      return [
        ...trayFaces(tray, settings.covering === "none" ? undefined : cover, own),
        ...(front === undefined || settings.covering === "none" ? [] : [frontFace(assembly.cover!, front, own)]),
      ];
    });
}

/** The inside of a front wall, from its foot up: turned in at both sides and at the rim, bare at the foot but for its lining. */
function frontFace({ boardWidth, boardHeight, boardCaliper }: Case, covering: Blank, parts: readonly Part[]): Face {
  const [side, rim] = [covering.runAlong!.at(-1)!.length - boardCaliper, covering.runAcross!.at(-1)!.length];
  const piece = pieceOf(parts, "front lining");
  const [along, across] = piece === undefined ? [0, 0] : grainFirst(piece);
  return {
    name: "front wall",
    size: [boardWidth, boardHeight],
    covered: [
      { from: [0, 0], to: [side, boardHeight] },
      { from: [boardWidth - side, 0], to: [boardWidth, boardHeight] },
      { from: [0, boardHeight - rim], to: [boardWidth, boardHeight] },
    ],
    linings: [{ from: [(boardWidth - along) / 2, 0], to: [(boardWidth + along) / 2, across] }],
  };
}

function trayFaces(tray: Tray, cover: Blank | undefined, parts: readonly Part[]): readonly Face[] {
  const [width, height, depth] = [extent(tray.inside, X), extent(tray.inside, Y), extent(tray.inside, Z)];
  const runs = cover?.runAcross?.some(({ name }) => name === "rim") ? cover.runAcross : cover?.runAlong;
  const run = (name: string) => runs?.findLast((each) => each.name === name)?.length ?? 0;
  const [down, floorTurn] = [run("inside"), run("on floor")];
  const floor = pieceOf(parts, "floor lining");
  const wall = (name: string, length: number): Face => {
    const piece = pieceOf(parts, name);
    const first = piece?.note.startsWith("before") === true;
    // What lies on the floor of one that is put in after.
    const onFloor = piece === undefined || first ? 0 : turnOf(parts, tray);
    const [along, across] = piece === undefined ? [0, 0] : grainFirst(piece);
    return {
      name: `${tray.name} ${name}`,
      size: [length, depth],
      covered: [{ from: [0, depth - down], to: [length, depth] }],
      linings:
        piece === undefined ? [] : [{ from: [(length - along) / 2, 0], to: [(length + along) / 2, across - onFloor] }],
    };
  };
  const floors: Face = {
    name: `${tray.name} floor`,
    size: [width, height],
    covered: floorTurn === 0 ? [] : ring(width, height, floorTurn),
    linings: floor === undefined ? [] : [centred([width, height], sizeAlong(floor, height >= width || tray.openSpine))],
  };
  return [
    floors,
    wall(tray.openSpine ? "fore-edge wall lining" : "side wall lining", height),
    wall("head wall lining", width),
  ];
}

/** How much of a wall lining that is put in after the covering lies on the floor: what its note promises. */
function turnOf(parts: readonly Part[], tray: Tray): number {
  const lying = parts.find(({ name, note }) => name === "head wall lining" && note.includes("on to the floor"));
  return lying === undefined ? 0 : Math.min(15, extent(tray.inside, X) / 2, extent(tray.inside, Y) / 2);
}

function sleeveFaces(tray: Tray, parts: readonly Part[]): readonly Face[] {
  const [width, height, depth] = [extent(tray.inside, X), extent(tray.inside, Y), extent(tray.inside, Z)];
  const face = (name: string, along: number, across: number): Face => {
    const piece = pieceOf(parts, name);
    return {
      name,
      size: [along, across],
      covered: [],
      linings: piece === undefined ? [] : [centred([along, across], grainFirst(piece))],
    };
  };
  return [
    face("side lining", height, width),
    face("back wall lining", height, depth),
    face("head wall lining", width, depth),
  ];
}

function lookAt({ name, size, covered, linings }: Face, where: string, { turnIn }: SettledSettings): void {
  const [along, across] = size;
  for (let i = 0; i < POINTS; i++)
    for (let j = 0; j < POINTS; j++) {
      const at = [between(EDGE, along - EDGE, i), between(EDGE, across - EDGE, j)] as const;
      const cover = covered.some((each) => holds(each, at));
      const lining = linings.some((each) => holds(each, at));
      if (!cover && !lining) throw new Error(`${name} is bare at ${at.join(", ")} of ${size.join(" x ")}: ${where}`);
      if (!cover || !lining) continue;
      const inward = Math.min(at[0], at[1], along - at[0], across - at[1]);
      const lap = name.endsWith("lining") ? at[1] - (across - lowest(covered, across)) : inward;
      if (lap > turnIn + 1) throw new Error(`${name} is covered twice at ${at.join(", ")}: ${where}`);
    }
}

function lowest(covered: readonly Rectangle[], across: number): number {
  return Math.max(...covered.map(({ from }) => across - from[1]));
}

/** Nothing is bare of the boards of a case beside its trays, or of its spine. */
function besideTheTrays({ cover, trays }: Assembly, blanks: readonly Blank[], settings: SettledSettings): void {
  const covering = blanks.find(({ name }) => name === "case covering");
  if (cover === undefined || covering === undefined || settings.covering === "none") return;
  const turn = covering.runAcross![0]!.length;
  for (const tray of trays) {
    const beside = cover.boardWidth - extent(tray.outside, X);
    const above = (cover.boardHeight - extent(tray.outside, Y)) / 2;
    if (turn < Math.max(beside, above)) throw new Error(`case is bare beside the ${tray.name} tray: ${turn}`);
  }
  const lining = blanks.find(({ name }) => name === "spine lining")!;
  expect(lining.across).toBeGreaterThanOrEqual(cover.spineWidth + 2 * cover.joint);
  expect(lining.along + 2 * turn).toBeGreaterThanOrEqual(cover.boardHeight);
}

function pieceOf(parts: readonly Part[], name: string): Part | undefined {
  return parts.find((part) => part.name === name);
}

/** Along the grain, then across it. */
function grainFirst({ length, width, grain }: Part): readonly [number, number] {
  return grain === "along width" ? [width, length] : [length, width];
}

/** Across the spine, then along it. */
function sizeAlong(part: Part, grainAlongHeight: boolean): readonly [number, number] {
  const [along, across] = grainFirst(part);
  return grainAlongHeight ? [across, along] : [along, across];
}

function centred([along, across]: readonly [number, number], [long, wide]: readonly [number, number]): Rectangle {
  return {
    from: [(along - long) / 2, (across - wide) / 2],
    to: [(along + long) / 2, (across + wide) / 2],
  };
}

function ring(width: number, height: number, by: number): readonly Rectangle[] {
  return [
    { from: [0, 0], to: [by, height] },
    { from: [width - by, 0], to: [width, height] },
    { from: [0, 0], to: [width, by] },
    { from: [0, height - by], to: [width, height] },
  ];
}

function holds({ from, to }: Rectangle, [x, y]: readonly [number, number]): boolean {
  return x >= from[0] && x <= to[0] && y >= from[1] && y <= to[1];
}

function between(low: number, high: number, step: number): number {
  return low + ((high - low) * step) / (POINTS - 1);
}
