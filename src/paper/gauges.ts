import { CASE_BLANKS } from "../enclosure/build/caseBlanks";
import { stockFor } from "../settings/coverStock";
import type { Mm } from "../measure/units";
import type { Ticket } from "./ticket";

/** What is marked on every edge alike: how far the covering is turned in, and where a corner of it is cut. */
export interface Gauge {
  readonly turnIn: Mm;
  /** Of the board whose corners are covered; undefined for the turn-in alone. */
  readonly caliper: Mm | undefined;
  readonly serves: readonly string[];
}

/** Of a mitred corner, what is left beyond the corner of the board, in thicknesses of the board. Common practice, no source. */
export const MITRE_BOARDS = 1.5;

/** Each turn-in and each mitred corner once, with the tickets that it serves. */
export function gaugesOf(tickets: readonly Ticket[]): readonly Gauge[] {
  const found = new Map<string, { turnIn: Mm; caliper: Mm | undefined; serves: string[] }>();
  const add = (turnIn: Mm, caliper: Mm | undefined, identifier: string): void => {
    const key = `${caliper === undefined ? 0 : 1} ${turnIn} ${caliper}`;
    const gauge = found.get(key) ?? { turnIn, caliper, serves: [] };
    found.set(key, gauge);
    if (!gauge.serves.includes(identifier)) gauge.serves.push(identifier);
  };
  for (const { identifier, sized } of tickets) {
    const { assembly, settings } = sized;
    const coverings = assembly.kind
      .blanks(assembly, settings)
      .filter(({ material }) => material === "covering" && stockFor(material, settings) !== "none");
    if (coverings.length === 0) continue;
    add(settings.turnIn, undefined, identifier);
    const board = assembly.parts.find(({ role }) => role === "case")?.board;
    // What covers a case is turned in all round; boards of other enclosures are turned in along their edges.
    if (board !== undefined && coverings.some(({ name }) => name === CASE_BLANKS[0]))
      add(settings.turnIn, board.caliper, identifier);
  }
  return [...found.values()].sort((one, other) => Number(one.caliper ?? 0) - Number(other.caliper ?? 0));
}

/** How far from the corner of the blank its sides are cut, along each: the cut is square to the bisector. */
export function mitreLeg(turnIn: Mm, caliper: Mm): Mm {
  return 2 * turnIn - MITRE_BOARDS * caliper * Math.SQRT2;
}
