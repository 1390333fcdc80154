import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { closedView } from "../../src/drawing/assembledView";
import type { Assembly } from "../../src/enclosure/assembly";
import { panelsOf } from "../../src/enclosure/placedPart";
import { KINDS } from "../../src/enclosure/registry";
import { X, Y, Z, type Axis } from "../../src/enclosure/space";
import { assemblyFor, KINDS_FOLDER, pictureOf, renderedKinds } from "./renderedKinds";
import { outside, readDrawing } from "./readDrawing";

const AXES = [0, 1, 2] as const;
const folder = join(__dirname, "../..", KINDS_FOLDER);

test.each(renderedKinds().map(({ file, svg }) => [file, svg] as const))(
  "the committed %s is what the code draws (npm run kinds)",
  (file, svg) => {
    expect(readFileSync(join(folder, file), "utf8")).toBe(svg);
    // A file of its own has no page to take colours from.
    expect(svg).not.toMatch(/currentColor|var\(/);
  },
);

test.each(KINDS.map((kind) => [kind.name, kind] as const))("a %s lies within its drawing", (_, kind) => {
  expect(outside(readDrawing(pictureOf(kind)))).toEqual([]);
});

test.each(KINDS.map((kind) => [kind.name, kind] as const))(
  "a %s closed lies within its drawing, head and spine named",
  (_, kind) => {
    const assembly = assemblyFor(kind);
    const closed = closedView(assembly, { width: 200, height: 140 });
    // What has no board or card over its middle never closes.
    expect(closed === undefined).toBe(!isOverTheItem(assembly));
    if (closed === undefined) return;
    const drawing = readDrawing(closed);
    expect(outside(drawing)).toEqual([]);
    expect(closed.shapes.flatMap((shape) => (shape.kind === "text" ? [shape.text] : []))).toEqual(["head", "spine"]);
  },
);

function isOverTheItem({ parts, holder: { inside } }: Assembly): boolean {
  const middle = (axis: Axis) => (inside.min[axis] + inside.max[axis]) / 2;
  return panelsOf(parts).some(
    ({ min, max }) =>
      max[Z] > inside.max[Z] + 1e-6 &&
      ([X, Y] as const).every((axis) => min[axis] < middle(axis) && max[axis] > middle(axis)),
  );
}

test.each(["card", "board"])(
  "a book is drawn out of its slipcase in its chemise of %s, and goes through nothing",
  (chemise) => {
    const slipcase = KINDS.find(({ options }) => options.includes("chemise"))!;
    const bodies = slipcase.opened(assemblyFor(slipcase, `chemise=${chemise}`));
    expect(bodies.filter(({ isItem }) => isItem)).toHaveLength(1);
    const plain = slipcase.opened(assemblyFor(slipcase));
    expect(bodies.length).toBeGreaterThan(plain.length);
    for (const [at, { body }] of bodies.entries())
      for (const { body: other } of bodies.slice(0, at))
        expect(
          AXES.some((axis) => body.max[axis] <= other.min[axis] + 1e-6 || other.max[axis] <= body.min[axis] + 1e-6),
        ).toBe(true);
  },
);

test("no drawing is kept of a kind that there is not, and no two are alike", () => {
  expect(readdirSync(folder).sort()).toEqual(
    renderedKinds()
      .map(({ file }) => file)
      .sort(),
  );
  const bodies = renderedKinds().map(({ svg }) => svg.replace(/aria-label="[^"]*"/, ""));
  expect(new Set(bodies).size).toBe(bodies.length);
});
