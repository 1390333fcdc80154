import { benchModulus } from "../board/benchModulus";
import { cautionsOf } from "../board/cautions";
import { enclosureMass } from "../board/mass";
import { baseSag, neededBoard } from "../board/neededBoard";
import { yearFit } from "../board/yearFit";
import { partList } from "../covering/partList";
import { isBlank } from "../measure/blank";
import { InputError, shown } from "../measure/errors";
import { readLength } from "../measure/readLength";
import { readMass } from "../measure/readMass";
import { fromMm, massIn, massUnitOf, tidy } from "../measure/units";
import { didYouMean, listed, plainName } from "../settings/names";
import { boardOfCaliper, type Board } from "../settings/readers";
import type { Settings } from "../settings/schema";
import { GREATEST_MODULUS_GPA, LEAST_MODULUS_GPA, refuseBoardCaliper } from "../settings/stock";
import { AXES, chosen, DIRECTIONS, isAll, type Answer } from "./answers";
import type { SaidOfRow } from "./saidOfRow";
import type { Sized } from "./sizeItem";

/** The stock row's own number for the board that the item needs, unconverted, so that a filter on it matches. */
export function caliperAnswer(sized: Sized): Answer {
  return neededBoard(sized, sized.requested).caliperAsGiven;
}

/** The name of the board that the item needs. */
export function boardStockAnswer(sized: Sized): Answer {
  return neededBoard(sized, sized.requested).stock;
}

/** Sag of the base with one board, or with every board of the stock table. */
export function sagAnswer(sized: Sized, board: string): Answer {
  const { settings, requested } = sized;
  const inUnit = (one: Board) => tidy(fromMm(baseSag(sized, one, requested), settings.unit));
  if (!isAll(board)) return inUnit(boardNamed(board, settings));
  const rows = settings.stock.filter((row) => row.material === "board");
  const once = rows.filter((row, index) => rows.findIndex((other) => other.stock === row.stock) === index);
  return [
    ["board", "sag"],
    ...once.map((row) => [row.stock, inUnit({ stock: row.stock, caliper: row.caliper, listed: row })]),
  ];
}

const FIT_ENDS = ["least", "greatest", "likely least", "likely greatest"] as const;

/** Free play left over the year. */
export function fitRangeAnswer(sized: Sized, direction: string, which: string): Answer {
  const { assembly, item, settings } = sized;
  const ends = isAll(which) ? FIT_ENDS : [chosen(which, "which", FIT_ENDS)];
  const play = (way: (typeof DIRECTIONS)[number]) => {
    const range = yearFit(assembly, item, AXES[way], settings);
    const byEnd = {
      least: range.least,
      greatest: range.greatest,
      "likely least": range.likelyLeast,
      "likely greatest": range.likelyGreatest,
    };
    return ends.map((end) => tidy(fromMm(byEnd[end], settings.unit)));
  };
  if (isAll(direction)) return [["direction", ...ends], ...DIRECTIONS.map((way) => [way, ...play(way)])];
  const row = play(chosen(direction, "direction", DIRECTIONS));
  return ends.length === 1 ? row[0]! : [row];
}

/** Mass of the empty enclosure. */
export function massAnswer({ assembly, settings }: Sized): Answer {
  return tidy(massIn(enclosureMass(partList(assembly, settings), settings), settings.unit));
}

/** What to watch, in one text, gravest first. */
export function cautionsAnswer(sized: Sized, said: SaidOfRow): Answer {
  return cautionsIn(sized, said).join("; ");
}

/** What to watch with one enclosure, gravest first. */
export function cautionsIn(sized: Sized, said: SaidOfRow): readonly string[] {
  return cautionsOf({ ...sized, ...said }, sized.settings);
}

/** The modulus of a board, from a strip on two supports with a weight in its middle. */
export function modulusAnswer(test: BenchReading, settings: Settings): Answer {
  const length = (name: "length" | "width" | "caliper" | "sag") =>
    readLength(test[name], { argument: name, unit: settings.unit, points: name === "caliper" });
  const gpa = benchModulus({
    length: length("length"),
    width: length("width"),
    caliper: length("caliper"),
    loadKg: readMass(test.load, { argument: "load", unit: massUnitOf(settings.unit) }),
    sag: length("sag"),
  });
  // The range that the modulus settings take: outside it a unit was mistaken.
  if (gpa >= LEAST_MODULUS_GPA && gpa <= GREATEST_MODULUS_GPA) return tidy(gpa);
  throw new InputError(
    "sag",
    shown(test.sag),
    `the modulus would be outside ${LEAST_MODULUS_GPA} to ${GREATEST_MODULUS_GPA} GPa`,
    "check the units of length, width, caliper, load and sag",
  );
}

/** A bench test as cells hold it. */
export type BenchReading = Readonly<Record<"length" | "width" | "caliper" | "load" | "sag", unknown>>;

function boardNamed(name: string, settings: Settings): Board {
  const wanted = plainName(name);
  const row = settings.stock.find((each) => each.material === "board" && plainName(each.stock) === wanted);
  if (row !== undefined) return { stock: row.stock, caliper: row.caliper, listed: row };
  if (isBlank(name) || !/\d/.test(name)) throw unknownBoard(name, settings);
  try {
    const caliper = readLength(/^[\d.]+$/.test(name) ? Number(name) : name, {
      argument: "board",
      unit: settings.shopUnit,
      points: true,
    });
    refuseBoardCaliper(caliper, "board", name);
    return boardOfCaliper(caliper, "board", settings.stock);
  } catch (error) {
    if (error instanceof InputError) throw unknownBoard(name, settings);
    throw error;
  }
}

function unknownBoard(name: string, { stock }: Settings): InputError {
  const names = [...new Set(stock.filter((row) => row.material === "board").map((row) => row.stock))];
  return new InputError(
    "board",
    shown(name),
    `give ${listed([...names, "a caliper such as 2 mm", "all"], "or")}`,
    didYouMean(name, names),
  );
}
