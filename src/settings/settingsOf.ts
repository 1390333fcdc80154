import { unwrapped } from "./errorCell";
import { readGiven, type Given } from "./given";
import { readSettings, type SettingsOptions } from "./readSettings";
import type { Settings } from "./schema";

/**
 * The settings of a row's arguments, read once for each distinct content, not once a cell.
 *
 * A spreadsheet hands every call a fresh copy of the same ranges, so a range is recognised by comparing its cells with
 * those seen lately, which costs nanoseconds a cell, and only what is new is read. Both memories are small and bounded;
 * they change no answer.
 *
 * @param settings the arguments: ranges and texts in any number, later over earlier
 * @throws InputError as `readSettings`
 */
export function settingsOf(settings: readonly unknown[], options: SettingsOptions = {}): Settings {
  let step = options.starterGuide === true ? root.guided : root.plain;
  const seen: Seen[] = [];
  for (let place = 0; place < settings.length; place++) {
    const one = recall(settings[place], place);
    seen.push(one);
    step = stepTo(one.id, step);
  }
  if (step.result !== undefined) return step.result;
  const result = readSettings(
    seen.map((each) => each.given),
    options,
  );
  step.result = result;
  results++;
  if (results >= MOST_RESULTS) forgetResults();
  return result;
}

/** What the arguments up to one give together, and where the next argument leads. */
interface Step {
  result: Settings | undefined;
  readonly next: Map<number, Step>;
}

const newStep = (): Step => ({ result: undefined, next: new Map() });

function stepTo(id: number, from: Step): Step {
  const known = from.next.get(id);
  if (known !== undefined) return known;
  const step = newStep();
  from.next.set(id, step);
  return step;
}

function forgetResults(): void {
  root = { plain: newStep(), guided: newStep() };
  results = 0;
}

interface Seen {
  readonly id: number;
  readonly place: number;
  readonly cells: readonly (readonly unknown[])[];
  readonly given: Given;
}

const MOST_RESULTS = 4096;
const MOST_TEXTS = 4096;
const MOST_RANGES = 16;

let root = { plain: newStep(), guided: newStep() };
let results = 0;
const texts: Map<string, Seen>[] = [];
const ranges: Seen[] = [];
let nextId = 1;

function recall(argument: unknown, place: number): Seen {
  const only = unwrapped(onlyCell(argument));
  if (typeof only === "string") {
    const ofPlace = (texts[place] ??= new Map<string, Seen>());
    const known = ofPlace.get(only);
    if (known !== undefined) return known;
    const fresh = read([[only]], place);
    if (ofPlace.size >= MOST_TEXTS) ofPlace.clear();
    ofPlace.set(only, fresh);
    return fresh;
  }
  const cells = Array.isArray(argument) ? (argument as readonly (readonly unknown[])[]) : [[argument]];
  for (let index = 0; index < ranges.length; index++) {
    const known = ranges[index]!;
    if (known.place !== place || !sameCells(known.cells, cells)) continue;
    if (index > 1) {
      ranges.splice(index, 1);
      ranges.unshift(known);
    }
    return known;
  }
  const fresh = read(
    cells.map((row) => row.map(unwrapped)),
    place,
  );
  ranges.unshift(fresh);
  if (ranges.length > MOST_RANGES) ranges.pop();
  return fresh;
}

function read(cells: readonly (readonly unknown[])[], place: number): Seen {
  return { id: nextId++, place, cells, given: readGiven(cells, `settings ${place + 1}`) };
}

function onlyCell(argument: unknown): unknown {
  if (!Array.isArray(argument)) return argument;
  const row: unknown = argument.length === 1 ? argument[0] : undefined;
  return Array.isArray(row) && row.length === 1 ? row[0] : undefined;
}

function sameCells(a: readonly (readonly unknown[])[], b: readonly (readonly unknown[])[]): boolean {
  if (a.length !== b.length) return false;
  for (let i = 0; i < a.length; i++) {
    const rowA = a[i]!;
    const rowB = b[i]!;
    if (rowA.length !== rowB.length) return false;
    for (let j = 0; j < rowA.length; j++) if (rowA[j] !== rowB[j]) return false;
  }
  return true;
}
