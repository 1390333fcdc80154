import type { Outcome } from "./outcome";
import type { SizedSurvey } from "./sizeSurvey";
import type { Survey } from "./surveyItems";

/**
 * What became of the rows of an earlier reading, for those that read as they did. A row that shares its box is sized
 * again: the others of the box may have changed.
 *
 * @param before sized with the same settings
 */
export function keptOutcomes(survey: Survey, before: SizedSurvey): (index: number) => Outcome | undefined {
  if (shared(survey) !== shared(before.survey)) return () => undefined;
  return (index) => {
    const [item, was, outcome] = [survey.items[index], before.survey.items[index], before.outcomes[index]];
    if (item === undefined || was === undefined || item.box !== "" || outcome?.state === "left out") return undefined;
    return written(item) === written(was) ? outcome : undefined;
  };
}

/** What rows share when they are sized: columns, units, words. Other columns and what is said of them change nothing. */
function shared({ recognition, units, unitWords, materialWords, asks }: Survey): string {
  const { columns, settings, ticks } = recognition;
  return written({ columns, settings, ticks, units, unitWords, materialWords, asks });
}

function written(value: unknown): string {
  return JSON.stringify(value, (_, part: unknown) =>
    part instanceof Map || part instanceof Set ? [...(part as Iterable<unknown>)] : part,
  );
}
