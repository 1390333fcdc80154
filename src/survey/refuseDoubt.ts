import { missingQuestion } from "../headings/columnQuestions";
import { Unanswered } from "../headings/questions";
import type { Recognition } from "../headings/recognition";
import { isBlank } from "../measure/blank";
import { shown } from "../measure/errors";

/**
 * Refuses a survey whose measures are in no column, or in more than one that may be it.
 *
 * @param asks whether a person is there to say where the thickness of two-measure texts stands
 * @throws Unanswered with what to choose from
 */
export function refuseDoubt(recognition: Recognition, cells: readonly (readonly unknown[])[], asks: boolean): void {
  const { ask, columns, questions } = recognition;
  const doubt = ask.find(({ needed }) => needed);
  if (doubt !== undefined)
    throw new Unanswered(
      {
        argument: doubt.field,
        got: doubt.candidates.map(({ heading }) => shown(heading)).join(" and "),
        expected: `${doubt.reason}: say which column it is`,
        cure: `or head one column ${doubt.field} and nothing else`,
      },
      questions,
    );
  if (columns.dimensions !== undefined) return asks ? askDepth(recognition, cells) : undefined;
  const missing = (["height", "width", "depth"] as const).filter((field) => columns[field] === undefined);
  if (missing.length === 0) return;
  const question = missingQuestion(missing, recognition, cells);
  throw new Unanswered(
    {
      argument: missing[0]!,
      got: "no such column",
      expected: "give the survey with its heading row and columns height, width and depth (or dimensions)",
      cure: "or say which column it is",
    },
    question === undefined ? [] : [question],
  );
}

/** Rows by which a column of dimension texts is judged. */
const JUDGED = 50;

/** Asks for the thickness where most dimension texts give two measures, and a column of numbers may hold it. */
function askDepth(recognition: Recognition, cells: readonly (readonly unknown[])[]): void {
  const { columns, firstRow } = recognition;
  const { dimensions, depth, height } = columns;
  if (dimensions === undefined || depth !== undefined || height !== undefined) return;
  const texts = cells
    .slice(firstRow - 1, firstRow - 1 + JUDGED)
    .map((row) => row[dimensions.column - 1])
    .filter((cell): cell is string => typeof cell === "string" && !isBlank(cell));
  if (texts.filter((text) => text.match(/\d+(?:[.,/]\d+)?/g)?.length === 2).length * 2 <= texts.length) return;
  const question = missingQuestion(["depth"], recognition, cells, true);
  if (question === undefined) return;
  throw new Unanswered(
    {
      argument: "depth",
      got: "dimension texts of two measures",
      expected: "an enclosure needs the thickness too",
      cure: "say which column holds it",
    },
    [question],
  );
}
