import type { ParseArgsConfig } from "node:util";
import { GUIDE_CELLS } from "../settings/starterGuide";
import { STARTER_STOCK, stockCells } from "../settings/starterStock";
import { writeCsv } from "../workbook/writeCsv";
import { demoCommand } from "./demo";
import { fillCommand } from "./fill";
import { openCommand } from "./open";
import type { Output } from "./output";
import { partsCommand } from "./parts";
import { readSurvey, type SurveyOptions } from "./readSurvey";
import {
  COMMON,
  FIELDS,
  flag,
  settingsOfOptions,
  SIZING,
  SURVEY,
  surveyOptions,
  text,
  textOf,
  type Given,
} from "./surveyOptions";
import { shelfCommand, sizesCommand } from "./shelf";
import { sizeCount } from "../survey/standardSizes/sizeCount";
import { kindsCommand, settingsCommand } from "./reference";
import { estimateCommand } from "./estimate";
import { planCommand } from "./sheets";
import { searchOptions } from "./searchOptions";

export const COMMANDS: Readonly<Record<string, { readonly options: ParseArgsConfig["options"]; readonly run: Run }>> = {
  fill: {
    options: { ...SURVEY, columns: text, "cut-list": flag, values: flag, "in-place": flag },
    run: (given, [survey]) =>
      fillCommand({
        ...surveyOptions(given, survey),
        out: textOf(given["out"]),
        columns: textOf(given["columns"]),
        values: given["values"] === true,
        cutList: given["cut-list"] === true,
        inPlace: given["in-place"] === true,
        replace: given["replace"] === true,
        ...(process.stderr.isTTY ? { onProgress: showProgress } : {}),
      }),
  },
  plan: {
    options: { ...SURVEY, only: text, by: text, seconds: text, steps: text, sheets: flag },
    run: (given, [survey]) =>
      planCommand(readSurvey(surveyOptions(given, survey)), {
        stock: textOf(given["only"]),
        by: textOf(given["by"]),
        sheets: given["sheets"] === true,
        out: textOf(given["out"]),
        replace: given["replace"] === true,
        ...searchOptions(given),
      }),
  },
  estimate: {
    options: { ...SURVEY, by: text, seconds: text, steps: text, "in-place": flag },
    run: (given, [survey]) => {
      const read = readSurvey(withGrouping(given, survey));
      const target = {
        out: textOf(given["out"]),
        inPlace: given["in-place"] === true,
        replace: given["replace"] === true,
      };
      return estimateCommand(read, target, searchOptions(given));
    },
  },
  paper: {
    options: {
      ...SURVEY,
      what: text,
      paper: text,
      seconds: text,
      steps: text,
      by: text,
      "two-up": flag,
      once: flag,
      date: text,
      labels: text,
      "label-size": text,
      "label-gap": text,
      "label-margin": text,
      "label-order": text,
    },
    run: async (given, [survey]) => {
      // Fonts and PDF take time to load: only here.
      const { paperCommand } = await import("./paper");
      return paperCommand(readSurvey(surveyOptions(given, survey)), {
        what: textOf(given["what"]),
        paper: textOf(given["paper"]),
        by: textOf(given["by"]),
        twoUp: given["two-up"] === true,
        once: given["once"] === true,
        date: textOf(given["date"]),
        labels: {
          sheet: textOf(given["labels"]),
          size: textOf(given["label-size"]),
          gap: textOf(given["label-gap"]),
          margin: textOf(given["label-margin"]),
          order: textOf(given["label-order"]),
        },
        out: textOf(given["out"]),
        replace: given["replace"] === true,
        search: searchOptions(given),
        ...(process.stderr.isTTY ? { onProgress: showProgress } : {}),
      });
    },
  },
  apply: {
    options: { ...SURVEY, paper: text, seconds: text, steps: text, date: text, by: text },
    run: async (given, [survey]) => {
      // Fonts, PDF and documents take time to load: only here.
      const { applyCommand } = await import("./apply");
      return applyCommand(readSurvey(withGrouping(given, survey)), {
        paper: textOf(given["paper"]),
        date: textOf(given["date"]),
        out: textOf(given["out"]),
        replace: given["replace"] === true,
        search: searchOptions(given),
      });
    },
  },
  shelf: {
    options: SURVEY,
    run: (given, [survey]) => shelfCommand(readSurvey(surveyOptions(given, survey))),
  },
  sizes: {
    options: { ...SURVEY, count: text, seconds: text },
    run: (given, [survey]) => {
      const count = sizeCount(textOf(given["count"]) ?? "12");
      return sizesCommand(readSurvey(surveyOptions(given, survey)), count, searchOptions(given).milliseconds);
    },
  },
  parts: {
    options: { ...SIZING, ...FIELDS },
    run: (given) =>
      partsCommand({
        height: textOf(given["height"]),
        width: textOf(given["width"]),
        depth: textOf(given["depth"]),
        weight: textOf(given["weight"]),
        enclosure: textOf(given["enclosure"]),
        settings: settingsOfOptions(given),
      }),
  },
  kinds: { options: COMMON, run: kindsCommand },
  settings: {
    options: { ...SIZING, "stock-table": flag, "board-guide": flag },
    run: (given) =>
      given["stock-table"] === true
        ? tableToEdit(stockCells(STARTER_STOCK))
        : given["board-guide"] === true
          ? tableToEdit(GUIDE_CELLS)
          : settingsCommand(settingsOfOptions(given)),
  },
  open: {
    options: { ...COMMON, port: text },
    run: (given, [survey]) =>
      openCommand(survey, textOf(given["port"]) ?? process.env["PORT"], given["debug"] === true),
  },
  demo: { options: { ...COMMON, out: text }, run: (given) => demoCommand(textOf(given["out"]) ?? "demo-output") },
};

type Run = (given: Given, positionals: readonly string[]) => Output | Promise<Output>;

/** The heading by which a budget is grouped is a setting too. */
function withGrouping(given: Given, survey: string | undefined): SurveyOptions {
  const by = textOf(given["by"]);
  const options = surveyOptions(given, survey);
  return by === undefined ? options : { ...options, settings: [...options.settings, `estimate by=${by}`] };
}

/** A starter table as .csv, to copy and edit. */
function tableToEdit(rows: readonly (readonly (number | string)[])[]): Output {
  return { text: new TextDecoder().decode(writeCsv(rows)).trimEnd(), json: rows };
}

function showProgress(fraction: number): void {
  process.stderr.write(`\r${Math.round(fraction * 100)} %${fraction >= 1 ? "\r      \r" : ""}`);
}
