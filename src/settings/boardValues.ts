import * as z from "zod/mini";
import { readLength } from "../measure/readLength";
import { stockNamed, words } from "./choices";
import { lengthText } from "./lengthValues";
import { boardOf, boardOfCaliper, type Board } from "./readers";
import { GREATEST_BOARD_MM, isBoardOrCard, LEAST_BOARD_MM, refuseBoardCaliper, type Material } from "./stock";
import { readBy, type ReadingContext, type ValueType } from "./valueType";
import { oneWordOf } from "./wordValues";

/** A stock name or a caliper. @param material of the stock that a caliper means */
export function board(material: Material): ValueType<Board> {
  return {
    choices: [
      { is: "stock", materials: ["board", "card"] },
      {
        is: "measure",
        what: "a caliper",
        from: LEAST_BOARD_MM,
        to: GREATEST_BOARD_MM,
        unit: "mm",
        examples: ["2", "2 mm", "80 pt"],
      },
    ],
    unit: "length",
    read: (context) => readBy((value) => readBoard(value, material, context), z.custom<Board>()),
    written: ({ stock, caliper, listed }, units) => (listed === undefined ? lengthText(caliper, units) : stock),
  };
}

/** The same, or `auto`. */
export function boardOrAuto(material: Material): ValueType<Board | "auto"> {
  const chosen = board(material);
  return {
    ...chosen,
    choices: [...chosen.choices, ...words(["auto"])],
    read: (context) => z.union([oneWordOf(["auto"]), chosen.read(context)]),
    written: (value, units) => (value === "auto" ? value : chosen.written(value, units)),
  };
}

function readBoard(value: unknown, material: Material, { name, shopUnit, stock }: ReadingContext): Board {
  const named = stockNamed(value, stock);
  if (named !== undefined) {
    refuseBoardCaliper(isBoardOrCard(named) ? named.caliper : 0, name, value);
    return boardOf(named);
  }
  const caliper = readLength(value, { argument: name, unit: shopUnit, points: true });
  refuseBoardCaliper(caliper, name, value);
  return boardOfCaliper(caliper, material, stock);
}
