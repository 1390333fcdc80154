import { basename, dirname, extname, join } from "node:path";
import { OFFERED_KINDS } from "../headings/columnQuestions";
import { ALL_ROWS, optionOf } from "../headings/questions";
import { cellText } from "../measure/blank";
import { InputError, shown } from "../measure/errors";
import { plainName } from "../settings/names";
import { boardTotals, firstBoardPlans } from "../estimate/boardTotals";
import { DEFAULT_FIGURES, withProblem } from "../item/figureCatalogue";
import type { SizedSurvey } from "../survey/sizeSurvey";
import { summaryOf } from "../survey/summary";
import { csvToWorkbook, cutListCsv, fillCsv, fillCsvOfBook } from "../filling/fillCsv";
import { surveySheets } from "../filling/chooseSheet";
import { fillWorkbook, type Filled } from "../filling/fillWorkbook";
import { isAll, readBookSurvey } from "../filling/readBookSurvey";
import { checkedSurvey } from "../survey/checkedSurvey";
import { bookOf } from "../workbook/book";
import { NotEditable } from "../workbook/notEditable";
import { openWorkbook } from "../workbook/openWorkbook";
import { readCsv } from "../workbook/readCsv";
import { saveBeside } from "../files/saveBeside";
import { CUTLIST_SHEET } from "../filling/madeSheets";
import { verifyEdit } from "../workbook/verifyEdit";
import { readRegularFile } from "../files/readRegularFile";
import { BOOKS, TEXTS, wrongKind, type SurveyOptions } from "./readSurvey";
import type { Output } from "./output";
import { visibleLine } from "./print";
import { summaryText } from "./summaryText";

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
  if (!isBook && !TEXTS.includes(kindOf(input))) throw wrongKind(input);
  const output = command.inPlace ? input : (command.out ?? beside(input, "-filled", extname(input)));
  const toBook = BOOKS.includes(kindOf(output));
  if (!toBook && !TEXTS.includes(kindOf(output)))
    throw new InputError("out", shown(basename(output)), "give a .csv or .xlsx file");
  const figures = figureList(command.columns);
  const written = toBook
    ? offeringText(command, () => writeBook(command, bytes, isBook, output, figures))
    : writeText(command, bytes, isBook, output, figures);
  return report(written);
}

/** Says the way on for a workbook that is never changed. */
function offeringText({ survey }: FillCommand, work: () => Written): Written {
  try {
    return work();
  } catch (error) {
    if (!(error instanceof NotEditable)) throw error;
    const { argument, got, expected, cure } = error;
    const out = basename(beside(survey, "-filled", ".csv"));
    throw new InputError(argument, got, expected, `${cure}; or add --out "${out}" for a text table with the figures`);
  }
}

function writeBook(
  command: FillCommand,
  input: Uint8Array,
  isBook: boolean,
  output: string,
  figures: readonly string[],
): Written {
  if (!isBook) checkedSurvey(readCsv(input).rows, command.settings, command.recognise);
  const all = openWorkbook(isBook ? input : csvToWorkbook(readCsv(input), command.recognise));
  const sheets = isAll(bookOf(all), command.sheet)
    ? surveySheets(bookOf(all), command.recognise).map(({ name }) => name)
    : [command.sheet];
  let original = all;
  let done: Filled | undefined;
  for (const sheet of sheets) {
    if (done !== undefined) original = openWorkbook(done.edit.bytes);
    const filled = fillWorkbook(original, {
      figures,
      settings: command.settings,
      ...(sheet === undefined ? {} : { sheet }),
      recognise: command.recognise,
      values: command.values,
      cutList: command.cutList,
      ...(command.onProgress === undefined ? {} : { onProgress: command.onProgress }),
    });
    done = { ...filled, said: [...(done?.said ?? []), ...filled.said] };
  }
  const { edit, said } = done!;
  const sized =
    sheets.length === 1
      ? done!.sized
      : readBookSurvey(bookOf(all), { sheet: command.sheet!, recognise: command.recognise, settings: command.settings })
          .sized;
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

function writeText(
  command: FillCommand,
  input: Uint8Array,
  isBook: boolean,
  output: string,
  figures: readonly string[],
): Written {
  const { sheet, settings, recognise } = command;
  const csv = isBook ? undefined : readCsv(input);
  const { bytes, sized, said } =
    csv === undefined
      ? fillCsvOfBook(bookOf(openWorkbook(input)), figures, {
          settings,
          recognise,
          ...(sheet === undefined ? {} : { sheet }),
        })
      : fillCsv(csv, figures, settings, recognise);
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
  const boards = boardTotals(sized, firstBoardPlans(sized), summary.boardArea);
  const text = [
    "What was read",
    ...said.map((line) => `  ${visibleLine(line)}`),
    "",
    summaryText(summary, boards, sized.settings),
    ...wordHint(sized).map(visibleLine),
    "",
    "Files",
    ...files.map(({ what, path }) => `  ${what}: ${path}`),
  ].join("\n");
  return { text, json: { ...summary, boards, said, files } };
}

/** How the meaning of a word that no kind is known by, or of a blank, is said once for all its rows. */
function wordHint({ survey, outcomes }: SizedSurvey): readonly string[] {
  const at = outcomes.findIndex(
    (outcome, i) =>
      outcome.state === "problem" &&
      outcome.error instanceof InputError &&
      outcome.error.argument === "enclosure" &&
      typeof survey.items[i]!.cells.enclosure === "string",
  );
  if (at < 0) return [];
  const word = cellText(survey.items[at]!.cells.enclosure);
  const meaning = OFFERED_KINDS[0];
  return [
    "",
    word.trim() === ""
      ? `Rows that name no enclosure are all given one with ${optionOf({ words: [{ word: ALL_ROWS, meaning }] })}`
      : `What a word means is said once for all its rows, such as ${optionOf({ words: [{ word, meaning }] })}`,
  ];
}
