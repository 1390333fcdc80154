import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { KINDS_FOLDER, renderedKinds } from "./renderedKinds";
import { outside, readDrawing } from "./readDrawing";

const folder = join(__dirname, "../..", KINDS_FOLDER);

test.each(renderedKinds().map(({ file, svg }) => [file, svg] as const))(
  "the committed %s is what the code draws (npx tsx test/drawing/renderKinds.ts)",
  (file, svg) => {
    expect(readFileSync(join(folder, file), "utf8")).toBe(svg);
    expect(outside(readDrawing(svg))).toEqual([]);
    // A file of its own has no page to take colours from.
    expect(svg).not.toMatch(/currentColor|var\(/);
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
