import type { Part } from "../enclosure/part";

/** What the bench style must know of a part. */
export interface CutFacts {
  /** The ring whose walls are cut from one strip; undefined for what is no wall. */
  readonly strip?: string;
  /** Along its length, along its width: made to a finished first part, so cut larger and trimmed to it. */
  readonly later?: { readonly length: boolean; readonly width: boolean };
}

const SECOND_TRAYS = ["lid", "large", "bottom"];

export function cutFacts({ placed, tray, name, material }: Part): CutFacts {
  if (placed === undefined || material !== "board") return {};
  const second = SECOND_TRAYS.includes(tray) || placed.role === "case";
  const wall = placed.role === "wall";
  const ring = /^(inner|outer) /.exec(name)?.[1] ?? "";
  return {
    ...(wall ? { strip: `${tray} ${ring}`.trim() } : {}),
    ...(second ? { later: { length: true, width: true } } : {}),
  };
}
