import { parseArgs, type ParseArgsConfig } from "node:util";
import { isMainThread } from "node:worker_threads";
import { InputError, shown } from "../measure/errors";
import { didYouMean } from "../settings/names";
import { GUIDE_CELLS } from "../settings/starterGuide";
import { STARTER_STOCK, stockCells } from "../settings/starterStock";
import { writeCsv } from "../workbook/writeCsv";
import { demoCommand } from "./demo";
import { fail, failOutside } from "./fail";
import { fillCommand } from "./fill";
import { HELP } from "./help";
import { openCommand } from "./open";
import type { Output } from "./output";
import { partsCommand } from "./parts";
import { print, visibleJson, warn } from "./print";
import { servePlans, type BesideOptions } from "./planBeside";
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

const COMMANDS: Readonly<Record<string, { readonly options: ParseArgsConfig["options"]; readonly run: Run }>> = {
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

type Run = (given: Given, positionals: readonly string[]) => Output | Promise<Output>;

if (isMainThread) {
  const debug = process.argv.includes("--debug");
  failOutside(debug);
  void main(process.argv.slice(2))
    .catch((error: unknown) => {
      const [, , name = "", ...rest] = process.argv;
      return fail(error, debug, { name, rest, json: rest.includes("--json") });
    })
    .then((code) => {
      process.exitCode = code;
    });
} else servePlans();

/** Least time between two lines of progress, ms. */
const PROGRESS_EVERY = 500;

function searchOptions(given: Given): BesideOptions {
  const seconds = textOf(given["seconds"]);
  const steps = textOf(given["steps"]);
  if (seconds !== undefined && !(Number(seconds) > 0 && Number.isFinite(Number(seconds))))
    throw new InputError("seconds", shown(seconds), "give the seconds to search for each stock, such as 10");
  if (steps !== undefined && !(Number(steps) >= 0 && Number.isInteger(Number(steps))))
    throw new InputError("steps", shown(steps), "give a whole number of steps for each stock, such as 2000");
  const limits = {
    ...(seconds === undefined ? {} : { milliseconds: Number(seconds) * 1000 }),
    ...(steps === undefined ? {} : { steps: Number(steps) }),
  };
  if (seconds === undefined && !process.stderr.isTTY) return limits;
  const last = new Map<string, number>();
  return {
    ...limits,
    onProgress: (stock, { sheets, gap, elapsedMs }) => {
      if (performance.now() - (last.get(stock) ?? Number.NEGATIVE_INFINITY) < PROGRESS_EVERY) return;
      last.set(stock, performance.now());
      const over = gap === 0 ? "cannot be fewer" : `at most ${(gap * 100).toFixed(1)} % over the least`;
      warn(`${stock}: ${sheets} ${sheets === 1 ? "sheet" : "sheets"}, ${over}, ${(elapsedMs / 1000).toFixed(1)} s`);
    },
  };
}

async function main([name = "", ...rest]: readonly string[]): Promise<number> {
  if (name === "" || name === "--help" || name === "-h" || name === "help") {
    print(ownOf(HELP, rest[0] ?? "") ?? HELP[""]!);
    return 0;
  }
  const command = ownOf(COMMANDS, name);
  if (command === undefined)
    throw new InputError(
      "command",
      shown(name),
      `give ${Object.keys(COMMANDS).join(", ")}`,
      didYouMean(name, Object.keys(COMMANDS)),
    );
  const { values, positionals } = parseCommand(rest, command.options);
  if (values["help"] === true) {
    print(HELP[name]!);
    return 0;
  }
  const { text: answer, json } = await command.run(values, positionals);
  print(values["json"] === true ? visibleJson(json) : answer);
  return 0;
}

/** Of a typed name: `constructor` and its like are on every object, and are no command. */
function ownOf<Value>(list: Readonly<Record<string, Value>>, name: string): Value | undefined {
  return Object.hasOwn(list, name) ? list[name] : undefined;
}

function parseCommand(args: readonly string[], options: ParseArgsConfig["options"]) {
  try {
    const { values, positionals } = parseArgs({ args: [...args], options: options ?? {}, allowPositionals: true });
    return { values: values as Given, positionals };
  } catch (error) {
    const message =
      error instanceof Error ? error.message.replace(/\. To specify.*$/s, "") : "options that cannot be read";
    throw new InputError("options", message, "see --help");
  }
}

function showProgress(fraction: number): void {
  process.stderr.write(`\r${Math.round(fraction * 100)} %${fraction >= 1 ? "\r      \r" : ""}`);
}
