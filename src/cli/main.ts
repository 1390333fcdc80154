import { parseArgs, type ParseArgsConfig } from "node:util";
import { InputError, NoAnswer, shown } from "../measure/errors";
import { didYouMean } from "../settings/names";
import { STARTER_STOCK, stockCells } from "../settings/starterStock";
import { readCsv } from "../workbook/readCsv";
import { writeCsv } from "../workbook/writeCsv";
import { demoCommand } from "./demo";
import { readInput } from "./files";
import { fillCommand } from "./fill";
import { HELP } from "./help";
import type { Output } from "./output";
import { partsCommand } from "./parts";
import { kindsCommand, settingsCommand } from "./reference";

/** Nothing could be done. */
const FAILED = 2;

const text = { type: "string" } as const;
const flag = { type: "boolean", default: false } as const;
const many = { type: "string", multiple: true } as const;

const COMMON = { json: flag, help: { ...flag, short: "h" } } as const;
const SIZING = { ...COMMON, set: many, settings: many, stock: many, unit: text } as const;
const FIELDS = {
  height: text,
  width: text,
  depth: text,
  weight: text,
  enclosure: text,
} as const;

const COMMANDS: Readonly<Record<string, { readonly options: ParseArgsConfig["options"]; readonly run: Run }>> = {
  fill: {
    options: {
      ...SIZING,
      ...FIELDS,
      dimensions: text,
      identifier: text,
      quantity: text,
      box: text,
      out: text,
      columns: text,
      sheet: text,
      "heading-row": text,
      "cut-list": flag,
      values: flag,
      "in-place": flag,
      replace: flag,
    },
    run: (given, [survey]) => {
      if (survey === undefined) throw new InputError("survey", "nothing", "give a file: enclosure-columns fill SURVEY");
      const named = ["height", "width", "depth", "weight", "enclosure", "dimensions", "identifier", "quantity", "box"];
      const columns = Object.fromEntries(
        named.flatMap((field) => (given[field] === undefined ? [] : [[field, String(given[field])]])),
      );
      return fillCommand({
        survey,
        out: textOf(given["out"]),
        columns: textOf(given["columns"]),
        settings: settingsOfOptions(given),
        sheet: textOf(given["sheet"]),
        recognise: { columns, ...headingRow(textOf(given["heading-row"])) },
        values: given["values"] === true,
        cutList: given["cut-list"] === true,
        inPlace: given["in-place"] === true,
        replace: given["replace"] === true,
        ...(process.stderr.isTTY ? { onProgress: showProgress } : {}),
      });
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
    options: { ...SIZING, "stock-table": flag },
    run: (given) =>
      given["stock-table"] === true
        ? {
            text: new TextDecoder().decode(writeCsv(stockCells(STARTER_STOCK))).trimEnd(),
            json: stockCells(STARTER_STOCK),
          }
        : settingsCommand(settingsOfOptions(given)),
  },
  demo: { options: { ...COMMON, out: text }, run: (given) => demoCommand(textOf(given["out"]) ?? "demo-output") },
};

type Given = Readonly<Record<string, unknown>>;
type Run = (given: Given, positionals: readonly string[]) => Output;

process.exitCode = main(process.argv.slice(2));

function main([name = "", ...rest]: readonly string[]): number {
  if (name === "" || name === "--help" || name === "-h" || name === "help") {
    console.log(HELP[rest[0] ?? ""] ?? HELP[""]);
    return 0;
  }
  try {
    const command = COMMANDS[name];
    if (command === undefined)
      throw new InputError(
        "command",
        shown(name),
        `give ${Object.keys(COMMANDS).join(", ")}`,
        didYouMean(name, Object.keys(COMMANDS)),
      );
    const { values, positionals } = parseCommand(rest, command.options);
    if (values["help"] === true) {
      console.log(HELP[name]);
      return 0;
    }
    const { text: answer, json } = command.run(values, positionals);
    console.log(values["json"] === true ? JSON.stringify(json, null, 2) : answer);
    return 0;
  } catch (error) {
    if (!(error instanceof InputError) && !(error instanceof NoAnswer)) throw error;
    console.error(error.message);
    return FAILED;
  }
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

function textOf(value: unknown): string | undefined {
  return typeof value === "string" ? value : undefined;
}

/** Settings files, then stock tables, then texts: later over earlier. */
function settingsOfOptions(given: Given): readonly unknown[] {
  const files = (name: "settings" | "stock") =>
    ((given[name] as readonly string[] | undefined) ?? []).map((path) => readCsv(readInput(path, name)).rows);
  const unit = textOf(given["unit"]);
  return [
    ...files("settings"),
    ...files("stock"),
    ...(unit === undefined ? [] : [`unit=${unit}`]),
    ...((given["set"] as readonly string[] | undefined) ?? []),
  ];
}

function headingRow(row: string | undefined): { readonly headingRow?: number } {
  if (row === undefined) return {};
  const number = Number(row);
  if (Number.isInteger(number) && number > 0) return { headingRow: number };
  throw new InputError("heading-row", shown(row), "give the number of a row, 1 or more");
}

function showProgress(fraction: number): void {
  process.stderr.write(`\r${Math.round(fraction * 100)} %${fraction >= 1 ? "\r      \r" : ""}`);
}
