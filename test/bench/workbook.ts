/**
 * How long filling a survey takes, and how much memory: run with `npx tsx test/bench/workbook.ts [rows...]`.
 *
 * A survey of 12 columns with texts and numbers gets six columns of formulas; the file is proved as `saveBeside` would.
 * For 10,000 rows the time must stay under 5 s and the memory under 600 MB; 100,000 rows must finish.
 */
import { recogniseColumns, surveyRows } from "../../src/headings/recognise";
import { bookOf } from "../../src/workbook/book";
import { chooseSheet, surveyPlace } from "../../src/filling/chooseSheet";
import { createWorkbook } from "../../src/workbook/createWorkbook";
import { editWorkbook } from "../../src/workbook/editWorkbook";
import type { CellContent } from "../../src/workbook/edits";
import { openWorkbook } from "../../src/workbook/openWorkbook";
import { readSheet } from "../../src/workbook/readSheet";
import { verifyEdit } from "../../src/workbook/verifyEdit";

const HEADINGS = [
  "Call number",
  "Title",
  "H (mm)",
  "W (mm)",
  "D (mm)",
  "Weight (g)",
  "Enclosure",
  "Notes",
  "Condition",
  "Shelf",
  "Seen by",
  "Year",
];
const NEW_COLUMNS = 6;
const TIME_LIMIT = 5_000;
const MEMORY_LIMIT = 600;
const LIMITED_ROWS = 10_000;

function survey(rows: number): Uint8Array {
  const items = Array.from({ length: rows }, (_, i): CellContent[] => [
    `MS ${i + 1}`,
    `Title number ${i} of a collection, with a subtitle`,
    100 + ((i * 37) % 400),
    80 + ((i * 23) % 300),
    10 + ((i * 7) % 90),
    200 + ((i * 131) % 3_000),
    i % 3 === 0 ? "lidded box" : "clamshell box",
    "a note",
    "fair",
    `R${i % 40}`,
    "someone",
    1_700 + (i % 250),
  ]);
  return createWorkbook([{ name: "Survey", rows: [HEADINGS, ...items] }]);
}

function fill(bytes: Uint8Array): { parts: Record<string, number>; shown: number; size: number } {
  const parts: Record<string, number> = {};
  let at = performance.now();
  const lap = (name: string): void => {
    parts[name] = Math.round(performance.now() - at);
    at = performance.now();
  };
  let shown = 0;
  const workbook = openWorkbook(bytes);
  const { sheet, table } = chooseSheet(bookOf(workbook));
  const { rows } = readSheet(workbook, sheet.name, { onProgress: () => void shown++ });
  lap("read");
  const found = recogniseColumns(rows, surveyPlace(bookOf(workbook), sheet, table));
  const items = surveyRows(rows, found);
  lap("recognise");
  const columns = Array.from({ length: NEW_COLUMNS }, (_, c) => ({
    heading: `outside ${c}`,
    format: "0.0",
    cells: items.map(({ row }) => ({
      formula: `_xldudf_ENC_OUTSIDE($C${row},$D${row},$E${row},$G${row},"height",settings,stock)`,
      result: row / 8 + c,
    })),
  }));
  const { headingRow, firstRow, lastRow, lastColumn } = found;
  const edit = editWorkbook(
    workbook,
    { columns: { sheet: sheet.name, headingRow, firstRow, lastRow, lastColumn, columns } },
    () => void shown++,
  );
  lap("edit");
  verifyEdit(workbook, edit, edit.bytes);
  lap("prove");
  return { parts, shown, size: edit.bytes.length };
}

const sizes = process.argv.slice(2).map(Number);
for (const rows of sizes.length > 0 ? sizes : [LIMITED_ROWS, 100_000]) {
  const bytes = survey(rows);
  const from = performance.now();
  const cpu = process.cpuUsage();
  const { parts, shown, size } = fill(bytes);
  const took = Math.round(performance.now() - from);
  const used = process.cpuUsage(cpu);
  // Judged by processor time, which other programs on the machine do not stretch.
  const processor = Math.round((used.user + used.system) / 1000);
  // The highest memory of the whole process, the making of the survey included.
  const memory = Math.round(process.resourceUsage().maxRSS / 1024);
  console.log(
    `${rows} rows: ${took} ms, of the processor ${processor} ms (${JSON.stringify(parts)}), ${memory} MB, ${shown} times progress told, ${Math.round(size / 1024)} KB written`,
  );
  if (rows === LIMITED_ROWS && (processor > TIME_LIMIT || memory > MEMORY_LIMIT)) {
    console.error(`over the limit of ${TIME_LIMIT} ms and ${MEMORY_LIMIT} MB`);
    process.exitCode = 1;
  }
}
