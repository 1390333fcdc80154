import { KINDS } from "../../src/enclosure/registry";
import { boundingBox } from "../../src/enclosure/space";
import { explodedView } from "../../src/drawing/explodedView";
import { pulledApart } from "../../src/drawing/pulledApart";
import { EVERY_STRUCTURE } from "../enclosure/everyEnclosure";
import { book, enclosed } from "../enclosure/sizing";
import { drawsEveryPart } from "../suites/drawsEveryPart";
import { overlapping, readDrawing } from "./readDrawing";

drawsEveryPart(EVERY_STRUCTURE);

test("a part says the size that it is cut to, in the workbook's unit", () => {
  const read = readDrawing(explodedView(enclosed(book(300, 210, 40), "tray"), { unit: "mm" }));
  // The base lies under the walls, where no leader reaches it: a number on it and one beside its name.
  expect(read.texts.map(({ text }) => text)).toEqual([
    "1",
    "1",
    "base",
    "303 × 213 mm",
    "side wall × 2",
    "307 × 44.5 mm",
    "head wall × 2",
    "213 × 44.5 mm",
    "flange card",
    "327 × 237 mm",
    "head",
    "spine",
  ]);
  const inches = readDrawing(
    explodedView(enclosed(book(254, 203.2, 25.4), "tray", "fit=none; covering allowance=none; round to=none"), {
      unit: "in",
    }),
  );
  expect(inches.texts.map(({ text }) => text)).toContain("10 × 8 in");
});

test.each(KINDS.map(({ name }) => name))("a drawing without labels of a %s says nothing", (kind) => {
  const assembly = enclosed(book(300, 210, 40), kind);
  expect(readDrawing(explodedView(assembly, { unit: "mm", labels: false })).texts).toEqual([]);
});

test.each(KINDS.map(({ name }) => name))(
  "head and spine of a %s are named in a corner where nothing else is, but of one that stands",
  (kind) => {
    for (const [resting, words] of [
      ["back", ["head", "spine"]],
      ["foot", []],
    ] as const) {
      const read = readDrawing(
        explodedView(enclosed(book(300, 210, 40), kind, `rests on=${resting}`), { unit: "mm", width: 720 }),
      );
      expect(read.texts.filter(({ text }) => ["head", "spine"].includes(text)).map(({ text }) => text)).toEqual(words);
      expect(overlapping(read.texts)).toEqual([]);
    }
  },
);

test.each(KINDS.filter(({ folded }) => folded).map(({ name }) => name))(
  "a %s folded up has the number of each piece on it where its pieces are not drawn flat",
  (kind) => {
    const assembly = enclosed(book(300, 210, 40), kind);
    const numbers = assembly.parts.flatMap(({ panels }, index) => (panels.length > 0 ? [String(index + 1)] : []));
    const { texts } = readDrawing(explodedView(assembly, { unit: "mm", width: 450, flats: false }));
    expect(texts.map(({ text }) => text).sort()).toEqual([...numbers, "head", "spine"].sort());
    expect(overlapping(texts)).toEqual([]);
  },
);

test("a lid lies over its box, the base of a tray under its walls", () => {
  const lidded = enclosed(book(300, 210, 40), "lidded box");
  const pieces = pulledApart(lidded.kind.apart(lidded));
  const least = (test: (name: string, tray: string) => boolean) =>
    Math.min(...pieces.filter(({ part }) => test(part.name, part.tray)).map(({ body }) => body.min[2]));
  const most = (test: (name: string, tray: string) => boolean) =>
    Math.max(...pieces.filter(({ part }) => test(part.name, part.tray)).map(({ body }) => body.max[2]));
  expect(least((_, tray) => tray === "lid")).toBeGreaterThan(most((_, tray) => tray === "box"));
  expect(most((name, tray) => name === "base" && tray === "box")).toBeLessThan(least((name) => name.endsWith("wall")));
  expect(least((name, tray) => name === "base" && tray === "lid")).toBeGreaterThan(
    most((name) => name.endsWith("wall")),
  );
});

test("an opened clamshell holds the large tray on the front board, the small one on the back", () => {
  const box = enclosed(book(300, 210, 40), "clamshell box");
  const { groups, between } = box.kind.apart(box);
  const [small, large] = groups.map(({ pieces }) => boundingBox(pieces.map(({ body }) => body)));
  const cover = [...groups.flatMap(({ bed }) => bed), ...between];
  // Joint 5, spine 50.5 (large tray 48.5 outside and 2 of covering): by hand from the sizing rules.
  expect(large!.max[0]).toBeCloseTo(-(2 * 5 + 50.5), 9);
  expect(small!.min[0]).toBe(0);
  for (const { body } of cover) expect(body.max[2] - body.min[2]).toBeCloseTo(2, 9);
  expect(new Set(cover.map(({ body }) => Math.round(body.max[2] * 1e6))).size).toBe(1);
});
