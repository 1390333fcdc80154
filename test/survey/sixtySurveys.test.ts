import { mkdtempSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { parseArgs } from "node:util";
import { readSurvey } from "../../src/cli/readSurvey";
import { SURVEY, surveyOptions } from "../../src/cli/surveyOptions";
import { Unanswered } from "../../src/headings/questions";
import type { SizedSurvey } from "../../src/survey/sizeSurvey";
import { hasLibreOffice } from "../workbook/made/libreOffice";
import { SURVEYS, type MadeSurvey } from "./sixty/manifest";
import { fileOf } from "./sixty/writers";

jest.setTimeout(120_000);

/** The words of a line as a shell takes them. */
function shellWords(line: string): readonly string[] {
  return [...line.matchAll(/"([^"]*)"|'([^']*)'|([^\s"']+)/g)].map(
    ([, double, single, bare]) => (double ?? single ?? bare)!,
  );
}

function readWith(path: string, options: readonly string[]): SizedSurvey {
  const args = [path, ...options.flatMap(shellWords)];
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

/** Reads a survey, answering each question with the option that the manifest names. */
function readAnswering(path: string, { answers }: MadeSurvey): { sized: SizedSurvey; asked: number } {
  const given: string[] = [];
  for (let asked = 0; ; asked++) {
    try {
      return { sized: readWith(path, given), asked };
    } catch (error) {
      if (!(error instanceof Unanswered)) throw error;
      const options = error.questions.flatMap(({ choices }) => choices.map(({ option }) => option));
      const answer = answers[asked];
      expect({ asked: error.questions.map(({ text }) => text), answer }).toMatchObject({ answer: expect.any(String) });
      expect(options).toContain(answer);
      given.push(answer!);
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
