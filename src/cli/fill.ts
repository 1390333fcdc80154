import { basename, dirname, extname, join } from "node:path";
import { InputError, shown } from "../measure/errors";
import { plainName } from "../settings/names";
import { DEFAULT_FIGURES, withProblem } from "../item/figureCatalogue";
import type { SizedSurvey } from "../survey/sizeSurvey";
import { summaryOf, type Summary } from "../survey/summary";
import { csvToWorkbook, cutListCsv, fillCsv } from "../filling/fillCsv";
import { fillWorkbook } from "../filling/fillWorkbook";
import { openWorkbook } from "../workbook/openWorkbook";
import { readCsv } from "../workbook/readCsv";
import { saveBeside } from "../files/saveBeside";
import { CUTLIST_SHEET } from "../filling/surveyEdits";
import { verifyEdit } from "../workbook/verifyEdit";
import { readRegularFile } from "../files/readRegularFile";
import { BOOKS, TEXTS, type SurveyOptions } from "./readSurvey";
import type { Output } from "./output";
import { visibleLine } from "./print";
import { textTable } from "./textTable";

export interface FillCommand extends SurveyOptions {
  readonly out: string | undefined;
  readonly columns: string | undefined;
  readonly values: boolean;
  readonly cutList: boolean;
  readonly inPlace: boolean;
  readonly replace: boolean;
  readonly onProgress?: (fraction: number) => void;
}

interface Written {
  readonly sized: SizedSurvey;
  readonly said: readonly string[];
  readonly files: readonly { readonly what: string; readonly path: string }[];
}

/**
 * `fill`: a survey with its figures, written beside it.
 *
 * @throws InputError when nothing could be done; rows with problems are no reason
 */
export function fillCommand(command: FillCommand): Output {
  const input = command.survey;
  const bytes = readRegularFile(input, "survey");
  const isBook = BOOKS.includes(kindOf(input));
  if (!isBook && !TEXTS.includes(kindOf(input)))
    throw new InputError("survey", shown(basename(input)), "give an .xlsx, .xlsm or .csv file");
  const output = command.inPlace ? input : (command.out ?? beside(input, "-filled", extname(input)));
  const toBook = BOOKS.includes(kindOf(output));
  if (!toBook && (isBook || !TEXTS.includes(kindOf(output))))
    throw new InputError(
      "out",
      shown(basename(output)),
      isBook ? "give an .xlsx file for a workbook" : "give a .csv or .xlsx file",
    );
  const figures = figureList(command.columns);
  const written = toBook
    ? writeBook(command, bytes, isBook, output, figures)
    : writeText(command, bytes, output, figures);
  return report(written);
}

function writeBook(
  command: FillCommand,
  input: Uint8Array,
  isBook: boolean,
  output: string,
  figures: readonly string[],
): Written {
  const original = openWorkbook(isBook ? input : csvToWorkbook(readCsv(input), command.recognise));
  const { edit, sized, said } = fillWorkbook(original, {
    figures,
    settings: command.settings,
    ...(command.sheet === undefined ? {} : { sheet: command.sheet }),
    recognise: command.recognise,
    values: command.values,
    cutList: command.cutList,
    ...(command.onProgress === undefined ? {} : { onProgress: command.onProgress }),
  });
  const saved = saveBeside({
    input: command.survey,
    inputBytes: input,
    output,
    bytes: edit.bytes,
    verify: (bytes) => verifyEdit(original, edit, bytes),
    inPlace: command.inPlace,
    replace: command.replace,
  });
  return {
    sized,
    said,
    files: [
      {
        what: command.cutList ? `filled survey, cut list on its sheet "${CUTLIST_SHEET}"` : "filled survey",
        path: saved.output,
      },
      ...(saved.backup === undefined ? [] : [{ what: "as it was before", path: saved.backup }]),
    ],
  };
}

function writeText(command: FillCommand, input: Uint8Array, output: string, figures: readonly string[]): Written {
  const csv = readCsv(input);
  const { bytes, sized, said } = fillCsv(csv, figures, command.settings, command.recognise);
  const save = (path: string, content: Uint8Array) =>
    saveBeside({
      input: command.survey,
      inputBytes: input,
      output: path,
      bytes: content,
      inPlace: command.inPlace,
      replace: command.replace,
    });
  const saved = save(output, bytes);
  const files = [{ what: "filled survey", path: saved.output }];
  if (saved.backup !== undefined) files.push({ what: "as it was before", path: saved.backup });
  if (command.cutList) {
    const list = save(beside(output, "-cut-list", ".csv"), cutListCsv(sized, csv));
    files.push({ what: "cut list", path: list.output });
  }
  return { sized, said, files };
}

/** Figures of `--columns`, separated by semicolons; `problem` is always there, so that no row is lost silently. */
function figureList(columns: string | undefined): readonly string[] {
  const named = (columns ?? "default")
    .split(";")
    .map((name) => name.trim())
    .filter((name) => name !== "");
  return withProblem(named.flatMap((name) => (plainName(name) === "default" ? DEFAULT_FIGURES : [name])));
}

function kindOf(path: string): string {
  return extname(path).toLowerCase();
}

function beside(path: string, ending: string, extension: string): string {
  return join(dirname(path), basename(path, extname(path)) + ending + extension);
}

function report({ sized, said, files }: Written): Output {
  const summary = summaryOf(sized);
  const text = [
    "What was read",
    ...said.map((line) => `  ${visibleLine(line)}`),
    "",
    summaryText(summary),
    "",
    "Files",
    ...files.map(({ what, path }) => `  ${what}: ${path}`),
  ].join("\n");
  return { text, json: { ...summary, said, files } };
}

export function summaryText(summary: Summary): string {
  const { rows, sized, inBoxes, withoutEnclosure, totalsRows, problems, enclosures, boardArea, areaUnit } = summary;
  const counts = [
    `${sized} sized`,
    ...(inBoxes > 0 ? [`${inBoxes} in the box of another row`] : []),
    ...(withoutEnclosure > 0 ? [`${withoutEnclosure} blank or without enclosure`] : []),
    ...(totalsRows > 0 ? [`${totalsRows} row of totals left out`] : []),
    `${problems.length} with a problem`,
  ];
  const total = boardArea.reduce((sum, { area }) => sum + area, 0);
  return [
    `${rows} rows: ${counts.join(", ")}`,
    "",
    indented(textTable([["enclosure", "to make"], ...enclosures.map((each) => [each.enclosure, each.count])])),
    "",
    indented(
      textTable([
        ["board", "for items", `net area, ${areaUnit}`],
        ...boardArea.map((each) => [each.stock, each.items, each.area]),
        ...(boardArea.length > 1 ? [["all boards", "", total]] : []),
      ]),
    ),
    ...(problems.length === 0
      ? []
      : [
          "",
          "Rows with a problem, left out of the figures above",
          ...problems.map(
            ({ row, identifier, problem }) => `  row ${row}, ${visibleLine(`${identifier}: ${problem}`)}`,
          ),
        ]),
  ].join("\n");
}

function indented(text: string): string {
  return text.replace(/^/gm, "  ");
}
