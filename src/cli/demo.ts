import { mkdirSync, rmSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { writeCsv } from "../workbook/writeCsv";
import { DEMO_SURVEY } from "./demoSurvey";
import { fillCommand } from "./fill";
import type { Output } from "./output";

/** `demo`: the main job on an invented survey. */
export function demoCommand(folder: string): Output {
  mkdirSync(folder, { recursive: true });
  const survey = join(folder, "survey.csv");
  writeFileSync(survey, writeCsv(DEMO_SURVEY));
  const out = join(folder, "survey-filled.xlsx");
  // Only what an earlier demo wrote here.
  rmSync(out, { force: true });
  const { text, json } = fillCommand({
    survey,
    out,
    columns: "default; mass; cautions; side wall length; side wall height",
    settings: [],
    sheet: undefined,
    recognise: {},
    values: false,
    cutList: true,
    inPlace: false,
    replace: false,
  });
  const head = `Survey of an invented lighthouse archive: ${survey}\n`;
  return { text: `${head}\n${text}\n\nTo look at it in the browser: npm start -- ${out}`, json };
}
