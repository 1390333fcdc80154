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
  /** Worked out where panels that wait are limited. */
  needs: Needs | undefined;
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
  const whole: InHand = { panel, x: 0, y: 0, part: 0, depth: 0, needs: undefined };
  const waiting: InHand[] = isToCut(whole) ? [whole] : [];
  // No panel makes more wait while it is finished than the whole sheet does.
  const most = mostLoose === Number.POSITIVE_INFINITY ? 0 : wholeNeed(panel);
  let setting = 0;
  while (waiting.length > 0) {
    const isLimited = waiting.length + most > mostLoose;
    const among = isLimited ? withinLimit(waiting, setting, mostLoose) : waiting;
    const next = nextOf(among, setting);
    setting = settingOf(next);
    cuts.push(cutOf(next, gap, trim));
    takeCut(waiting, next);
  }
  return cuts;
}

/** The first panel that the fence stands at already, else the one to cut soonest. */
function nextOf(among: readonly InHand[], setting: number): InHand {
  let next = among[0]!;
  for (const hand of among) {
    if (settingOf(hand) === setting) return hand;
    next = sooner(next, hand);
  }
  return next;
}

/** Puts what is in hand after a cut in the place of the panel. */
function takeCut(waiting: InHand[], hand: InHand): void {
  const at = waiting.indexOf(hand);
  const [off, rest] = afterCut(hand);
  if (isToCut(off)) {
    waiting[at] = off;
    if (isToCut(rest)) waiting.splice(at + 1, 0, rest);
  } else if (isToCut(rest)) waiting[at] = rest;
  else waiting.splice(at, 1);
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

/** Of a panel, by part: the panels that wait at once while that part is finished, and while that one and all after it are. */
interface Needs {
  readonly parts: readonly number[];
  readonly rests: readonly number[];
}

/**
 * The panels to cut after which all can be finished with few enough waiting; where there is none, the ones nearest to
 * that. One that the fence stands at already is enough.
 */
function withinLimit(waiting: readonly InHand[], setting: number, mostLoose: number): readonly InHand[] {
  const counts: number[] = [];
  for (const hand of waiting) addTo(counts, needsOf(hand).rests[hand.part]!, 1);
  for (const hand of waiting)
    if (settingOf(hand) === setting && mostWaiting(counts, waiting.length, hand) <= mostLoose) return [hand];
  const all = waiting.map((hand) => mostWaiting(counts, waiting.length, hand));
  let least = Number.POSITIVE_INFINITY;
  for (const most of all) least = Math.min(least, most);
  const limit = Math.max(mostLoose, least);
  return waiting.filter((_, at) => all[at]! <= limit);
}

function addTo(counts: number[], need: number, more: number): void {
  while (counts.length <= need) counts.push(0);
  counts[need]! += more;
}

/**
 * The most panels that wait at once when one is cut and then all are finished one after another, the simplest first.
 *
 * @param counts how many panels have each need, the one to cut among them; `waiting` in all
 */
function mostWaiting(counts: number[], waiting: number, hand: InHand): number {
  const { panel, part } = hand;
  const { parts, rests } = needsOf(hand);
  const own = rests[part]!;
  // 0 for a piece or waste, which waits for nothing.
  const off = panel.parts[part]!.parts.length > 1 ? parts[part]! : 0;
  const isLast = part + 1 === panel.parts.length - 1;
  const rest = !isLast ? rests[part + 1]! : panel.parts[part + 1]!.parts.length > 1 ? parts[part + 1]! : 0;
  let left = waiting - 1;
  addTo(counts, own, -1);
  if (off > 0) {
    left++;
    addTo(counts, off, 1);
  }
  if (rest > 0) {
    left++;
    addTo(counts, rest, 1);
  }
  let most = 0;
  for (let need = 0; need < counts.length; need++) {
    if (counts[need] === 0) continue;
    most = Math.max(most, left - 1 + need);
    left -= counts[need]!;
  }
  if (off > 0) counts[off]!--;
  if (rest > 0) counts[rest]!--;
  counts[own]!++;
  return most;
}

function needsOf(hand: InHand): Needs {
  if (hand.needs !== undefined) return hand.needs;
  const parts = hand.panel.parts.map(wholeNeed);
  const rests = parts.slice();
  for (let at = parts.length - 2; at >= 0; at--) rests[at] = needOfBoth(parts[at]!, rests[at + 1]!);
  return (hand.needs = { parts, rests });
}

/** The panels that wait at once while a part that comes off and the rest are finished. */
function needOfBoth(off: number, rest: number): number {
  if (off === 0 || rest === 0) return Math.max(1, off, rest);
  return Math.min(Math.max(off + 1, rest), Math.max(rest + 1, off));
}

/** The panels that wait at once while a panel is finished; 0 when there is nothing to cut. */
function wholeNeed({ parts }: Panel): number {
  let rest = 0;
  for (let at = parts.length - 1; at >= 0; at--) {
    const off = wholeNeed(parts[at]!);
    rest = at === parts.length - 1 ? off : needOfBoth(off, rest);
  }
  return rest;
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
function afterCut(hand: InHand): readonly [InHand, InHand] {
  const { panel, x, y, part, depth, needs } = hand;
  const setting = settingOf(hand);
  const byLength = panel.axis === ALONG_LENGTH;
  const off: InHand = { panel: panel.parts[part]!, x, y, part: 0, depth: depth + 1, needs: undefined };
  const restX = byLength ? x + setting : x;
  const restY = byLength ? y : y + setting;
  if (part + 1 < panel.parts.length - 1) return [off, { panel, x: restX, y: restY, part: part + 1, depth, needs }];
  return [off, { panel: panel.parts[part + 1]!, x: restX, y: restY, part: 0, depth: depth + 1, needs: undefined }];
}
