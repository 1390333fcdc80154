import { existsSync, mkdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { saveBeside } from "../files/saveBeside";
import { writeCsv } from "../workbook/writeCsv";
import { DEMO_SURVEY } from "./demoSurvey";
import { fillCommand } from "./fill";
import type { Output } from "./output";

/** `demo`: the main job on an invented survey. */
export function demoCommand(folder: string): Output {
  mkdirSync(folder, { recursive: true });
  const survey = join(folder, "survey.csv");
  const bytes = writeCsv(DEMO_SURVEY);
  // An earlier demo in that folder has the same bytes, and stays; anything else is kept as a backup.
  const inputBytes = existsSync(survey) ? readFileSync(survey) : bytes;
  saveBeside({ input: survey, inputBytes, output: survey, bytes, inPlace: true });
  const out = join(folder, "survey-filled.xlsx");
  const { text, json } = fillCommand({
    survey,
    out,
    columns: "default; mass; cautions; shelf width",
    settings: [],
    sheet: undefined,
    recognise: {},
    values: false,
    cutList: true,
    inPlace: false,
    replace: true,
  });
  const head = `Survey of an invented lighthouse archive: ${survey}\n`;
  return { text: `${head}\n${text}\n\nTo look at it in the browser: npm start -- ${out}`, json };
}
