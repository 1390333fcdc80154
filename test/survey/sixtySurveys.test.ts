import { mkdtempSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { parseArgs } from "node:util";
import { errorAnswer } from "../../src/cli/errorText";
import { readSurvey } from "../../src/cli/readSurvey";
import { SURVEY, surveyOptions } from "../../src/cli/surveyOptions";
import { Unanswered } from "../../src/headings/questions";
import type { SizedSurvey } from "../../src/survey/sizeSurvey";
import { run } from "../cli/run";
import { hasLibreOffice } from "../workbook/made/libreOffice";
import { SURVEYS } from "./sixty/manifest";
import type { MadeSurvey } from "./sixty/made";
import { fileOf } from "./sixty/writers";

jest.setTimeout(120_000);

/** The words of a line as a shell takes them. */
function shellWords(line: string): readonly string[] {
  return [...line.matchAll(/(?:"[^"]*"|'[^']*'|\\.|[^\s"'\\])+/g)].map(([word]) =>
    word.replace(/"([^"]*)"|'([^']*)'|\\(.)/g, "$1$2$3"),
  );
}

/** Reads a survey as the program does with what is typed behind the name of the command. */
function readWith(args: readonly string[]): SizedSurvey {
  const { values, positionals } = parseArgs({ args: [...args], options: SURVEY, allowPositionals: true });
  return readSurvey(surveyOptions(values, positionals[0])).sized;
}

/** A line for each row, as the manifest writes it. */
function linesOf({ survey, outcomes }: SizedSurvey): readonly string[] {
  return survey.items.map(({ identifier }, i) => {
    const outcome = outcomes[i]!;
    if (outcome.state === "problem") return `${identifier}: problem ${outcome.error.message.split(":")[0]!}`;
    if (outcome.state !== "sized") return `${identifier}: ${outcome.state}`;
    const { item, weightKg, kind } = outcome.sized;
    const weight = weightKg === undefined ? "no weight" : `${Math.round(weightKg * 1000) / 1000} kg`;
    return `${identifier}: ${[item.height, item.width, item.depth].map(Math.round).join(" x ")}, ${weight}, ${kind.name}`;
  });
}

/** What the program prints for a program: each question with its lines to type. */
interface Printed {
  readonly questions: readonly {
    readonly text: string;
    readonly choices: readonly { readonly option: string; readonly line: string }[];
  }[];
}

/** What is typed behind the command's name, by the printed line that gives the answer. */
function lineFor({ questions }: Printed, answer: string | undefined): readonly string[] {
  expect({ asked: questions.map(({ text }) => text), answer }).toMatchObject({ answer: expect.any(String) });
  const choices = questions.flatMap((question) => question.choices);
  expect(choices.map(({ option }) => option)).toContain(answer);
  const [program, command, ...rest] = shellWords(choices.find(({ option }) => option === answer)!.line);
  expect([program, command]).toEqual(["enclosure-columns", "fill"]);
  return rest;
}

/** Reads a survey, running for each question the printed line of the option that the manifest names. */
function readAnswering(path: string, { answers }: MadeSurvey): { sized: SizedSurvey; asked: number } {
  let rest: readonly string[] = [path];
  for (let asked = 0; ; asked++) {
    try {
      return { sized: readWith(rest), asked };
    } catch (error) {
      if (!(error instanceof Unanswered)) throw error;
      rest = lineFor(errorAnswer(error, { name: "fill", rest, json: true }) as Printed, answers[asked]);
    }
  }
}

test("the manifest holds sixty surveys, at least two in each of twelve languages, a third of them hard", () => {
  expect(SURVEYS.length).toBeGreaterThanOrEqual(60);
  const languages = new Map<string, number>();
  for (const { language } of SURVEYS) languages.set(language, (languages.get(language) ?? 0) + 1);
  expect(languages.size).toBe(12);
  expect(Math.min(...languages.values())).toBeGreaterThanOrEqual(2);
  expect(SURVEYS.filter((survey) => survey.hard).length * 3).toBeGreaterThanOrEqual(SURVEYS.length);
});

const readable = SURVEYS.filter(({ writer }) => writer !== "libreoffice" || hasLibreOffice);

test.each(readable.map((survey) => [survey.name, survey] as const))(
  "%s is read as its manifest says",
  async (_, survey) => {
    const { name, bytes } = await fileOf(survey);
    const path = join(mkdtempSync(join(tmpdir(), "sixty-")), name);
    writeFileSync(path, bytes);
    const { sized, asked } = readAnswering(path, survey);
    expect(linesOf(sized)).toEqual(survey.expected);
    expect(asked).toBe(survey.answers.length);
    const { recognition, notes } = sized.survey;
    if (survey.said !== undefined) expect([...recognition.said, ...notes].join("\n")).toContain(survey.said);
  },
);

/** Answers of many sorts, in surveys that are quick to make: their lines are run by the built program too. */
const RUN_FOR_REAL: ReadonlySet<string> = new Set([
  "--unit cm",
  '--not "Box no."',
  '--all "clamshell box"',
  "--sheet all",
  "--no-headings --height B --width C --depth D",
]);

test.each(
  SURVEYS.filter(({ answers: [first = ""] }) => RUN_FOR_REAL.has(first)).map(
    (survey) => [survey.name, survey] as const,
  ),
)("the built program takes its own printed lines for %s", async (_, survey) => {
  const { name, bytes } = await fileOf(survey);
  const folder = mkdtempSync(join(tmpdir(), "sixty run "));
  writeFileSync(join(folder, name), bytes);
  let ran = run(folder, "fill", name, "--json", "--out", "filled $1.csv");
  for (const answer of survey.answers) {
    expect(ran.code).toBe(2);
    ran = run(folder, "fill", ...lineFor(JSON.parse(ran.err) as Printed, answer));
  }
  expect(ran).toMatchObject({ code: 0, err: "" });
  const problems = survey.expected.filter((line) => line.includes(": problem"));
  expect(JSON.parse(ran.out)).toMatchObject({ rows: survey.expected.length, problems: { length: problems.length } });
});
