import { ALONG_LENGTH } from "./forest";
import { UNITS_PER_MM } from "./grid";
import type { Panel } from "./panels";
import type { Cut } from "./types";

/** A panel in hand with parts still to be cut off it; `x`, `y` are where its next part begins. */
interface InHand {
  readonly panel: Panel;
  readonly x: number;
  readonly y: number;
  readonly part: number;
  readonly depth: number;
}

/**
 * The cuts of a sheet in working order: long strips first, and while the fence stands at a setting, every cut that it
 * serves.
 *
 * @param panel the arranged sheet, in units with the piece gap added
 * @param gap the piece gap, units
 * @param trim where the sheet's usable part begins, mm
 * @param mostLoose panels that may wait to be cut at once, where possible
 */
export function cutOrder(
  panel: Panel,
  gap: number,
  trim: number,
  mostLoose = Number.POSITIVE_INFINITY,
): readonly Cut[] {
  const cuts: Cut[] = [];
  const needs: Needs = new Map();
  let waiting: InHand[] = [{ panel, x: 0, y: 0, part: 0, depth: 0 }].filter(isToCut);
  let setting = 0;
  while (waiting.length > 0) {
    const among = waiting.length + NEVER_MORE < mostLoose ? waiting : withinLimit(waiting, mostLoose, needs);
    const next = among.find((hand) => settingOf(hand) === setting) ?? among.reduce(sooner);
    setting = settingOf(next);
    cuts.push(cutOf(next, gap, trim));
    waiting = waiting.flatMap((hand) => (hand === next ? afterCut(hand).filter(isToCut) : [hand]));
  }
  return cuts;
}

function isToCut(hand: InHand): boolean {
  return hand.part < hand.panel.parts.length - 1;
}

function settingOf({ panel, part }: InHand): number {
  const next = panel.parts[part]!;
  return panel.axis === ALONG_LENGTH ? next.length : next.width;
}

/** Of two panels the one to cut first: the less divided, then the one with the wider part. */
function sooner(one: InHand, other: InHand): InHand {
  if (one.depth !== other.depth) return one.depth < other.depth ? one : other;
  return settingOf(one) >= settingOf(other) ? one : other;
}

/** For each panel, by the part that is next: the panels that wait at once while it is finished. */
type Needs = Map<Panel, number[]>;

/** Finishing a panel never makes so many more wait: each of its levels is at most one. */
const NEVER_MORE = 8;

/** The panels to cut after which all can be finished with few enough waiting; where there is none, the one nearest to that. */
function withinLimit(waiting: readonly InHand[], mostLoose: number, needs: Needs): readonly InHand[] {
  const most = waiting.map((hand) =>
    mostWaiting(
      waiting.flatMap((other) => (other === hand ? afterCut(hand).filter(isToCut) : [other])),
      needs,
    ),
  );
  const least = Math.max(
    mostLoose,
    most.reduce((one, other) => Math.min(one, other)),
  );
  return waiting.filter((_, at) => most[at]! <= least);
}

/** The most panels that wait at once when they are finished one after another, the simplest first. */
function mostWaiting(hands: readonly InHand[], needs: Needs): number {
  const own = hands.map(({ panel, part }) => needOf(panel, part, needs)).sort((one, other) => one - other);
  return own.reduce((most, need, at) => Math.max(most, own.length - 1 - at + need), 0);
}

/** The panels that wait at once while one is finished, from some part of it on; 0 when there is nothing to cut. */
function needOf(panel: Panel, from: number, needs: Needs): number {
  const known = needs.get(panel);
  if (known !== undefined) return known[from]!;
  const own: number[] = [];
  needs.set(panel, own);
  let rest = 0;
  for (let at = panel.parts.length - 1; at >= 0; at--) {
    const off = needOf(panel.parts[at]!, 0, needs);
    const both = Math.min(Math.max(off + 1, rest), Math.max(rest + 1, off));
    rest = at === panel.parts.length - 1 ? off : Math.max(1, off === 0 ? rest : rest === 0 ? off : both);
    own[at] = rest;
  }
  if (own.length === 0) own.push(0);
  return own[from]!;
}

function cutOf(hand: InHand, gap: number, trim: number): Cut {
  const { panel, x, y } = hand;
  const mm = (units: number) => units / UNITS_PER_MM;
  const setting = settingOf(hand);
  const place = (units: number) => trim + mm(units);
  if (panel.axis === ALONG_LENGTH)
    return cut("across", place(x + setting - gap), place(y), place(y + panel.width - gap), mm(setting - gap));
  return cut("along", place(y + setting - gap), place(x), place(x + panel.length - gap), mm(setting - gap));
}

function cut(way: Cut["way"], at: number, from: number, to: number, setting: number): Cut {
  return { way, at, from, to, setting };
}

/** What is in hand after a cut: the part that came off, and the rest; of two parts both. */
function afterCut(hand: InHand): readonly InHand[] {
  const { panel, x, y, part, depth } = hand;
  const setting = settingOf(hand);
  const byLength = panel.axis === ALONG_LENGTH;
  const off: InHand = { panel: panel.parts[part]!, x, y, part: 0, depth: depth + 1 };
  const rest = { x: byLength ? x + setting : x, y: byLength ? y : y + setting };
  const last = part + 1 === panel.parts.length - 1;
  return [
    off,
    last ? { panel: panel.parts[part + 1]!, ...rest, part: 0, depth: depth + 1 } : { ...hand, ...rest, part: part + 1 },
  ];
}
