import type { SizedSurvey } from "../survey/sizeSurvey";

/** Objects that can hurt, so that the work is planned for them; none where the survey names no hazard. */
export function hazardText({ outcomes }: SizedSurvey): readonly string[] {
  const hazards = outcomes.flatMap((outcome) =>
    outcome.state === "sized" && outcome.said.hazard !== "" ? [outcome.said.hazard] : [],
  );
  if (hazards.length === 0) return [];
  const named = [...new Set(hazards)].join("; ");
  return [
    `${hazards.length} ${hazards.length === 1 ? "enclosure holds" : "enclosures hold"} a hazard (${named}): these objects are handled by people who are licensed to assess them, by local rules.`,
  ];
}
