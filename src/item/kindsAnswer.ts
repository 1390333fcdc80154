import { KINDS } from "../enclosure/registry";
import type { Answer } from "./answers";

const HEADINGS = ["enclosure", "also accepted", "trays", "board and card parts", "constructions"] as const;

/** Names of every kind in one column, for a drop-down list. */
export function kindNames(): Answer {
  return KINDS.map(({ name }) => [name]);
}

/** Every kind with its other names, trays, parts and constructions. Lists inside a cell use `/`. */
export function kindsTable(): Answer {
  return [
    HEADINGS,
    ...KINDS.map(({ name, otherNames, trays, parts, constructions }) =>
      [[name], otherNames, trays, parts, constructions].map((words) => words.join(" / ")),
    ),
  ];
}
