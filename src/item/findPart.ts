import { CLOSURE_PIECES } from "../covering/closurePieces";
import { DIVIDER_COVERINGS } from "../covering/dividerPieces";
import { CUSHION_PIECES, WELL_PIECES } from "../covering/cushionPieces";
import type { Part } from "../enclosure/part";
import { KINDS } from "../enclosure/registry";
import { InputError, NoAnswer, shown } from "../measure/errors";
import { didYouMean, listed, plainName } from "../settings/names";
import type { Sized } from "./sizeItem";

/**
 * The part that a name means. Without its tray it means the tray that holds the item, else the only tray that has it.
 *
 * @param among the parts it may be, such as the walls alone
 * @param argument how messages call the name
 * @throws InputError when the name is no part's, or means more than one
 * @throws NoAnswer when it is a part, but not one that this enclosure has
 */
export function findPart<P extends Pick<Part, "name" | "tray" | "fullName">>(
  among: readonly P[],
  wanted: string,
  { kind, assembly }: Pick<Sized, "kind" | "assembly">,
  argument: string,
): P {
  const { named, readings } = argument === "wall" ? known.wall(wanted) : known.part(wanted);
  if (readings.length === 0)
    throw new InputError(
      argument,
      shown(wanted.trim()),
      `give the name of a ${argument}`,
      cureFor(named, among, argument, kind.name),
    );
  const holder = assembly.holder.name;
  const found = matching(among, readings, holder);
  if (found.length === 1) return found[0]!;
  if (found.length > 1)
    throw new InputError(
      argument,
      shown(wanted),
      `give ${listed(
        found.map((part) => part.fullName),
        "or",
      )}`,
    );
  const those = listed(
    among.map((part) => part.fullName),
    "and",
  );
  // A side wall is a part, but no base: the error names what was asked for.
  throw new NoAnswer(
    `${argument}: this ${kind.name} has no ${argument} called ${plainName(named)}; it has ${those || "none"}`,
  );
}

/** Whether the words name a part of some kind. */
export function isPartName(words: string): boolean {
  return known.part(words).readings.length > 0;
}

/** A name taken apart: the tray it starts with, if any, and the part's own name. */
interface Reading {
  readonly tray: string | undefined;
  readonly name: string;
  /** What a longer name ends in. */
  readonly asEnding: string;
}

const TRAYS = [...new Set(KINDS.flatMap((kind) => kind.trays))];

/** Part names by their plain form. */
const NAMES: ReadonlyMap<string, string> = new Map(
  [
    ...KINDS.flatMap(({ parts, coverings }) => [...parts, ...coverings]),
    ...CUSHION_PIECES,
    ...WELL_PIECES,
    ...CLOSURE_PIECES,
    ...DIVIDER_COVERINGS,
  ].map((name) => [plainName(name), name] as const),
);

/** The trade's other words; `front wall` is also the name of a part. */
const OTHER_NAMES: ReadonlyMap<string, string> = new Map([
  ["tail wall", "head wall"],
  ["foreedge wall", "fore-edge wall"],
  ["front wall", "fore-edge wall"],
  ["end wall", "head wall"],
  ["ring side wall", "side wall"],
  ["ring head wall", "head wall"],
  ["wall", "wall"],
  ["wall lining", "wall lining"],
]);

/** A name as it was asked for, and what it may mean. */
interface Named {
  readonly named: string;
  readonly readings: readonly Reading[];
}

/** The same names are asked for in every row. */
const known = { part: remembered((wanted) => wanted), wall: remembered(wallName) };

function remembered(nameOf: (wanted: string) => string): (wanted: string) => Named {
  const found = new Map<string, Named>();
  return (wanted) => {
    let one = found.get(wanted);
    if (one === undefined) {
      const named = nameOf(wanted);
      one = { named, readings: readingsOf(named) };
      if (found.size >= MOST_KNOWN) found.clear();
      found.set(wanted, one);
    }
    return one;
  };
}

const MOST_KNOWN = 1000;

function readingsOf(wanted: string): readonly Reading[] {
  const plain = plainName(wanted);
  const readings: Reading[] = [];
  for (const names of [NAMES, OTHER_NAMES]) {
    const whole = names.get(plain);
    if (whole !== undefined) readings.push(reading(undefined, whole));
    for (const tray of TRAYS) {
      const name = plain.startsWith(`${tray} `) ? names.get(plain.slice(tray.length + 1)) : undefined;
      if (name !== undefined) readings.push(reading(tray, name));
    }
  }
  return readings;
}

function reading(tray: string | undefined, name: string): Reading {
  return { tray, name, asEnding: ` ${name}` };
}

/**
 * The parts of a name: of the holder's tray before those of any, whole names before those that end in it, such as the
 * walls of both rings for `side wall`.
 */
function matching<P extends Pick<Part, "name" | "tray">>(
  among: readonly P[],
  readings: readonly Reading[],
  holder: string,
): readonly P[] {
  // Written as a loop over the parts: it runs for every figure of a survey.
  let found: P[] = [];
  let best = NO_MATCH;
  for (const part of among) {
    const match = matchOf(part, readings, holder);
    if (match > best || match === NO_MATCH) continue;
    if (match < best) found = [];
    best = match;
    found.push(part);
  }
  return found;
}

/** How well a name means a part, the best first: in the holder's tray, in any, by its ending there, by its ending anywhere. */
function matchOf(part: Pick<Part, "name" | "tray">, readings: readonly Reading[], holder: string): number {
  let best = NO_MATCH;
  for (const { tray, name, asEnding } of readings) {
    if (tray !== undefined && tray !== part.tray) continue;
    const elsewhere = tray === undefined && part.tray !== holder ? 1 : 0;
    if (part.name === name) best = Math.min(best, elsewhere);
    else if (part.name.endsWith(asEnding)) best = Math.min(best, ENDINGS + elsewhere);
  }
  return best;
}

const ENDINGS = 2;
const NO_MATCH = 4;

/** `side` is the side wall: "wall" may be left off the name of a wall. */
function wallName(wanted: string): string {
  const plain = plainName(wanted);
  return plain === "" || plain.endsWith("wall") ? wanted : `${wanted} wall`;
}

/** The nearest names of this enclosure; failing that of any part at all, which the next message then explains. */
function cureFor(wanted: string, among: readonly Pick<Part, "fullName">[], argument: string, kindName: string): string {
  const names = among.map((part) => part.fullName);
  const some = names.length === 0 ? `this ${kindName} has none` : `such as ${listed(names.slice(0, 4), "or")}`;
  return didYouMean(
    wanted,
    names,
    argument === "part" ? didYouMean(wanted, [...NAMES.values(), ...OTHER_NAMES.values()], some) : some,
  );
}
