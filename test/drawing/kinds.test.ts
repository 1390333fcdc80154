import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { KINDS } from "../../src/enclosure/registry";
import { KINDS_FOLDER, pictureOf, renderedKinds } from "./renderedKinds";
import { outside, readDrawing } from "./readDrawing";

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

test("no drawing is kept of a kind that there is not, and no two are alike", () => {
  expect(readdirSync(folder).sort()).toEqual(
    renderedKinds()
      .map(({ file }) => file)
      .sort(),
  );
  const bodies = renderedKinds().map(({ svg }) => svg.replace(/aria-label="[^"]*"/, ""));
  expect(new Set(bodies).size).toBe(bodies.length);
});
