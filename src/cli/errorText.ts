import { InputError } from "../measure/errors";
import { shellQuoted, Unanswered } from "../headings/questions";

/** What was typed: the command and what follows it. */
export interface Typed {
  readonly name: string;
  readonly rest: readonly string[];
  readonly json: boolean;
}

/** An error for a person; each question with its lines to type. */
export function errorLines(error: Error, typed: Typed | undefined): readonly string[] {
  const questions = error instanceof Unanswered ? error.questions : [];
  if (questions.length === 0 || typed === undefined) return [error.message];
  const [only, more] = questions;
  return [
    only !== undefined && more === undefined ? "One question first:" : `${questions.length} questions first:`,
    ...questions.flatMap(({ text, choices }) => [
      "",
      text,
      ...choices.flatMap(({ label, option }) => [`  ${label}`, `    ${lineOf(typed, option)}`]),
    ]),
  ];
}

/** The same for a program. */
export function errorAnswer(error: Error, typed: Typed): unknown {
  const { message } = error;
  if (!(error instanceof InputError)) return { error: { message } };
  const { argument, got, expected, cure } = error;
  const questions = error instanceof Unanswered ? error.questions : [];
  return {
    error: { message, argument, got, expected, cure },
    questions: questions.map(({ about, text, rows, choices }) => ({
      about,
      text,
      rows,
      choices: choices.map(({ label, option }) => ({ label, option, line: lineOf(typed, option) })),
    })),
  };
}

function lineOf({ name, rest }: Typed, option: string): string {
  return ["enclosure-columns", name, ...rest.map(shellQuoted), option].join(" ");
}
