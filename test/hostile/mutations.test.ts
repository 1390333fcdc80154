import { createHash } from "node:crypto";
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fillCommand } from "../../src/cli/fill";
import { createRandom, type Random } from "../../src/cutting/random";
import { ALL_ROWS } from "../../src/headings/questions";
import { InputError, NoAnswer, Unavailable } from "../../src/measure/errors";
import { livedIn } from "../workbook/made/livedIn";
import { fromExcelJs, fromPrefixedXml, fromWriteExcelFile } from "../workbook/made/otherWriters";
import { packageOf, partsOf } from "../workbook/made/package";

const RUNS = process.env["SOAK"] === undefined ? 150 : 9000;

/** Pieces of XML and of numbers that make trouble where they do not belong. */
const TROUBLE = [
  "<",
  ">",
  "</row>",
  "<row r='1'>",
  "&",
  '"',
  "1e999",
  "-1",
  "NaN",
  "\u0000",
  "xmlns:a='b'",
  "r=",
  "<c r='XFD1048577'/>",
  "]]>",
];

function changed(bytes: Uint8Array, random: Random): Uint8Array {
  const copy = Uint8Array.from(bytes);
  // In the container itself.
  if (random.below(4) === 0) {
    for (let i = 0; i < 1 + random.below(8); i++) copy[random.below(copy.length)] = random.below(256);
    return copy;
  }
  // In one part of it.
  const parts = { ...partsOf(bytes) };
  const names = Object.keys(parts);
  const name = names[random.below(names.length)]!;
  const text = Buffer.from(parts[name]!).toString("latin1");
  const at = random.below(text.length + 1);
  const cut = random.below(3) === 0 ? random.below(40) : 0;
  const trouble = TROUBLE[random.below(TROUBLE.length)]!;
  if (random.below(12) === 0) delete parts[name];
  else parts[name] = Buffer.from(text.slice(0, at) + trouble + text.slice(at + cut), "latin1");
  return packageOf(parts);
}

test(`${RUNS} workbooks with something changed at random are filled or refused in words, and stay as they were`, async () => {
  const originals = [livedIn(), await fromExcelJs(), await fromWriteExcelFile(), fromPrefixedXml()];
  const random = createRandom(RUNS);
  const folder = mkdtempSync(join(tmpdir(), "changed-"));
  const outcomes = { filled: 0, refused: 0 };
  try {
    for (let run = 0; run < RUNS; run++) {
      const survey = join(folder, "survey.xlsx");
      const bytes = changed(originals[run % originals.length]!, random);
      writeFileSync(survey, bytes);
      const before = createHash("sha256").update(bytes).digest("hex");
      try {
        fillCommand({
          survey,
          out: join(folder, "filled.xlsx"),
          columns: undefined,
          settings: [],
          sheet: undefined,
          recognise: { words: [{ word: ALL_ROWS, meaning: "clamshell box" }] },
          values: run % 2 === 0,
          cutList: false,
          inPlace: false,
          replace: true,
        });
        outcomes.filled++;
      } catch (error) {
        if (!(error instanceof InputError || error instanceof NoAnswer || error instanceof Unavailable))
          throw new Error(`run ${run}: ${String(error)}`, { cause: error });
        outcomes.refused++;
      }
      expect(createHash("sha256").update(readFileSync(survey)).digest("hex")).toBe(before);
    }
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
  // Both happen, or the changes are too harmless or too harmful to tell anything.
  expect(outcomes.filled).toBeGreaterThan(RUNS / 20);
  expect(outcomes.refused).toBeGreaterThan(RUNS / 20);
});
