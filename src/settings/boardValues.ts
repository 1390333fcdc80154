import { askedBoard, boardAsked, boardName, plyCaliper, type Board, type BoardMaterial } from "./boards";
import { words } from "./choices";
import { lengthText } from "./lengthValues";
import { GREATEST_BOARD_MM, LEAST_BOARD_MM, LEAST_CARD_MM } from "./stock";
import type { ValueType } from "./valueType";
import { wordAmong } from "./wordValues";

/** A stock name or a caliper, or plies of either. @param material of the stock that a caliper means */
export function board(material: BoardMaterial): ValueType<Board> {
  return {
    choices: [
      { is: "stock", materials: ["board", "card"] },
      {
        is: "measure",
        what: "a caliper",
        from: material === "card" ? LEAST_CARD_MM : LEAST_BOARD_MM,
        to: GREATEST_BOARD_MM,
        unit: "mm",
        examples: ["2", "2 mm", "80 pt"],
      },
    ],
    unit: "length",
    read: (value, context) => boardAsked(askedBoard(value, context), material, context.stock),
    written: (chosen, units) => {
      if (chosen.listed !== undefined) return boardName(chosen);
      return boardName({ stock: lengthText(plyCaliper(chosen), units), plies: chosen.plies });
    },
  };
}

/** The same, or `auto`. */
export function boardOrAuto(material: BoardMaterial): ValueType<Board | "auto"> {
  const chosen = board(material);
  return {
    ...chosen,
    choices: [...chosen.choices, ...words(["auto"])],
    read: (value, context) => wordAmong(["auto"], value) ?? chosen.read(value, context),
    written: (value, units) => (value === "auto" ? value : chosen.written(value, units)),
  };
}
