import { benchFraction } from "../measure/benchFraction";
import { InputError, NoAnswer, shown } from "../measure/errors";
import { readDimensions } from "../measure/readDimensions";
import { MEASURE, readLength } from "../measure/readLength";
import { fromMm, massIn, tidy } from "../measure/units";
import type { Settings } from "../settings/schema";
import { chosen, DIRECTIONS, isAll, type Answer, type Cell } from "./answers";

/** A measure as a plain number of the survey, which other functions read. */
export function measureAnswer(cell: unknown, { surveyUnit: unit }: Settings): Answer {
  return tidy(fromMm(readLength(cell, { argument: MEASURE, unit }), unit));
}

/** One figure of a dimension text, or height, width and depth side by side. */
export function dimensionsAnswer(cell: unknown, which: string, settings: Settings): Answer {
  const { surveyUnit: unit, textUnit, order } = settings;
  if (typeof cell !== "string")
    throw new InputError("text", shown(cell), "give a dimension text such as 31.5 x 24 x 4.2 cm");
  const wanted = isAll(which) ? undefined : chosen(which, "which", [...DIRECTIONS, "weight"] as const);
  const read = readDimensions(cell, { argument: "text", order, unit: textUnit ?? unit });
  const figure = (name: (typeof DIRECTIONS)[number]): Cell => {
    const size = read[name];
    return size === undefined ? new NoAnswer(`text: ${shown(cell)} has no ${name}`) : tidy(fromMm(size, unit));
  };
  if (wanted === undefined) return [DIRECTIONS.map(figure)];
  if (wanted !== "weight") return thrown(figure(wanted));
  if (read.weightKg === undefined) throw new NoAnswer(`text: ${shown(cell)} has no weight`);
  return tidy(massIn(read.weightKg, unit));
}

/** A bench reading in inches; a plain number is an answer, in the unit of those. */
export function fractionAnswer(cell: unknown, denominator: unknown, { answerUnit: unit }: Settings): Answer {
  return benchFraction(readLength(cell, { argument: "length", unit }), readDenominator(denominator));
}

function readDenominator(cell: unknown): number {
  const value = typeof cell === "string" && cell.trim() !== "" ? Number(cell) : cell;
  if (typeof value === "number" && Number.isFinite(value)) return value;
  throw new InputError("denominator", shown(cell), "give a whole number from 2 to 64, such as 16");
}

/** A lone figure without an answer is the whole cell's error. */
function thrown(cell: Cell): Cell {
  if (cell instanceof NoAnswer) throw cell;
  return cell;
}
