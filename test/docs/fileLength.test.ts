import { readdirSync, readFileSync } from "node:fs";
import path from "node:path";

/** A file of one thing is read at one go. The house rule: rarely over 150 lines, never over this. */
const MOST_LINES = 220;

const files = ["src", "functions"].flatMap((folder) =>
  readdirSync(folder, { recursive: true, encoding: "utf8" })
    .filter((name) => /\.tsx?$/.test(name))
    .map((name) => path.join(folder, name)),
);

test(`no file of code is over ${MOST_LINES} lines`, () => {
  const tooLong = files.flatMap((name) => {
    const lines = readFileSync(name, "utf8").split("\n").length - 1;
    return lines <= MOST_LINES
      ? []
      : [`${name} has ${lines} lines: move one thing that has a name of its own to a file named after it`];
  });
  expect(files.length).toBeGreaterThan(0);
  expect(tooLong).toEqual([]);
});
