import { benchModulus } from "../board/benchModulus";
import { cautionsOf } from "../board/cautions";
import { enclosureMass } from "../board/mass";
import { baseSpringing } from "../board/boardCautions";
import { weightOf } from "../board/itemWeight";
import { yearFit } from "../board/yearFit";
import { partList } from "../covering/partList";
import { InputError, NoAnswer, shown } from "../measure/errors";
import { readLength } from "../measure/readLength";
import { readMass } from "../measure/readMass";
import { fromMm, massIn, massUnitOf, tidy, type Mm } from "../measure/units";
import { didYouMean, listed } from "../settings/names";
import { askedBoard, boardAsked, boardName, boardOf, type Board } from "../settings/boards";
import { plainNumber } from "../settings/plainNumber";
import type { Settings } from "../settings/schema";
import { GREATEST_MODULUS_GPA, LEAST_MODULUS_GPA, type StockRow } from "../settings/stock";
import { AXES, chosen, DIRECTIONS, isAll, type Answer } from "./answers";
import type { SaidOfRow } from "./saidOfRow";
import type { Sized } from "./sizeItem";

/**
 * The caliper of the board in force: the stock row's own number, unconverted, so that a filter on it matches. Of a
 * laminated board the plies together, of a board that is not in stock its caliper in the shop's unit.
 */
export function caliperAnswer({ board, settings }: Sized): Answer {
  const { listed: row, plies, caliper } = board;
  if (row === undefined) return tidy(fromMm(caliper, settings.shopUnit));
  return plies === 1 ? row.caliperAsGiven : timesCaliper(row, plies);
}

/** The name of the board in force. */
export function boardStockAnswer({ board }: Sized): Answer {
  return boardName(board);
}

/** `80 pt` twice is `160 pt`. */
function timesCaliper({ caliperAsGiven: given, caliper }: StockRow, plies: number): number | string {
  if (typeof given === "number") return tidy(plies * given);
  const [number = ""] = /^[\d.,]+/.exec(given.trim()) ?? [];
  const value = plainNumber(number);
  const unit = given.trim().slice(number.length);
  return Number.isNaN(value) ? `${tidy(plies * caliper)} mm` : `${tidy(plies * value)}${unit}`;
}

/** Springing of the base with one board, or with every board of the stock table. */
export function sagAnswer(sized: Sized, board: string): Answer {
  const { settings, assembly, kind } = sized;
  const weight = weightOf(sized, settings);
  if (weight === undefined) throw new NoAnswer("weight: a sag follows from the weight; give it, or set item density");
  const inUnit = (one: Board) => {
    const w = baseSpringing(assembly, one, caseUnder(one, sized), weight.kg, settings);
    if (w === undefined) throw new NoAnswer(`enclosure: a ${kind.name} has no base board that sags`);
    return tidy(fromMm(w, settings.answerUnit));
  };
  if (!isAll(board)) return inUnit(boardNamed(board, settings));
  const rows = settings.stock.filter((row) => row.material === "board");
  const once = rows.filter((row, index) => rows.findIndex((other) => other.stock === row.stock) === index);
  return [["board", "sag"], ...once.map((row) => [row.stock, inUnit(boardOf(row))])];
}

/** Caliper of the case board under a tray of one board: as named, else the walls' as named, else the same board again. */
function caseUnder(board: Board, { requested }: Sized): Mm {
  const { caseBoard, wallBoard, origins } = requested;
  const named = caseBoard ?? (origins.has("wallBoard") ? wallBoard : undefined);
  return named === undefined || named === "auto" ? board.caliper : named.caliper;
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
    return ends.map((end) => tidy(fromMm(byEnd[end], settings.answerUnit)));
  };
  if (isAll(direction)) return [["direction", ...ends], ...DIRECTIONS.map((way) => [way, ...play(way)])];
  const row = play(chosen(direction, "direction", DIRECTIONS));
  return ends.length === 1 ? row[0]! : [row];
}

/** Mass of the empty enclosure. */
export function massAnswer({ assembly, settings }: Sized): Answer {
  return tidy(massIn(enclosureMass(partList(assembly, settings), settings), settings.answerUnit));
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
    readLength(test[name], { argument: name, unit: settings.surveyUnit, points: name === "caliper" });
  const gpa = benchModulus({
    length: length("length"),
    width: length("width"),
    caliper: length("caliper"),
    loadKg: readMass(test.load, { argument: "load", unit: massUnitOf(settings.surveyUnit) }),
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

function boardNamed(name: string, { stock, shopUnit }: Settings): Board {
  try {
    const plain = /^[\d.]+$/.test(name) ? Number(name) : name;
    const asked = askedBoard(plain, { name: "board", shopUnit, stock });
    if (asked.row?.material === "card") throw unknownBoard(name, stock);
    return boardAsked(asked, "board", stock);
  } catch (error) {
    if (error instanceof InputError) throw unknownBoard(name, stock);
    throw error;
  }
}

function unknownBoard(name: string, stock: readonly StockRow[]): InputError {
  const names = [...new Set(stock.filter((row) => row.material === "board").map((row) => row.stock))];
  return new InputError(
    "board",
    shown(name),
    `give ${listed([...names, "a caliper such as 2 mm", "all"], "or")}`,
    didYouMean(name, names),
  );
}
