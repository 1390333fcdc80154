import type { Mm } from "../../measure/units";
import { board, boardOrAuto } from "../boardValues";
import { setting } from "../definition";
import { autoOrLength, choiceOrLength, lengthOrNone } from "../lengthValues";
import { choice, stockName } from "../wordValues";

/** Default board and card, to be changed by every workshop. */
export const DEFAULT_BOARD_MM: Mm = 2;
export const DEFAULT_CARD_MM: Mm = 0.4;
export const DEFAULT_TURN_IN_MM: Mm = 15;

/** How a survey heads the column in which its keeper decides on a board. */
export const PREFERRED_BOARD = "preferred board";

/** Boards, cards, covering and lining. */
export const MATERIAL_SETTINGS = {
  wallBoard: setting({
    name: "wall board",
    otherNames: [PREFERRED_BOARD],
    takes: boardOrAuto("board"),
    byDefault: `auto with a board guide, and for a whole survey; else ${DEFAULT_BOARD_MM} mm`,
    meaning: "board of the walls, its caliper as measured; 2 x NAME is laminated; auto takes the board guide's",
  }),
  baseBoard: setting({
    name: "base board",
    takes: boardOrAuto("board"),
    byDefault: "the wall board",
    meaning: "board of the bases; auto takes the board guide's",
  }),
  caseBoard: setting({
    name: "case board",
    takes: boardOrAuto("board"),
    byDefault: "the wall board",
    meaning: "board of a clamshell's case; auto takes the board guide's",
    option: true,
  }),
  flangeCard: setting({
    name: "flange card",
    takes: board("card"),
    byDefault: `${DEFAULT_CARD_MM} mm`,
    meaning: "card under a flanged base, and of end cards",
    option: true,
  }),
  wrapperCard: setting({
    name: "wrapper card",
    takes: board("card"),
    byDefault: `by the board guide where there is one; else ${DEFAULT_CARD_MM} mm`,
    meaning: "card of a four-flap wrapper, and of a chemise",
    option: true,
  }),
  cardTrim: setting({
    name: "card trim",
    takes: lengthOrNone,
    fallback: 10,
    meaning: "what a laminated card is cut larger by on each edge, to be trimmed flush",
  }),
  covering: setting({
    name: "covering",
    otherNames: ["covering cloth"],
    takes: stockName,
    byDefault: "the first covering of the stock table",
    meaning: "covering stock; none leaves the enclosure without covering pieces",
  }),
  lining: setting({
    name: "lining",
    takes: stockName,
    byDefault: "the first lining of the stock table",
    meaning: "lining stock; none leaves the linings out",
  }),
  turnIn: setting({
    name: "turn-in",
    otherNames: ["overlap"],
    takes: autoOrLength("15", "15 mm", "5/8 in"),
    fallback: "auto",
    byDefault: `auto: ${DEFAULT_TURN_IN_MM} mm, on a clamshell's case more where it takes more to cover the board`,
    meaning: "covering turned in over an edge; never longer than half the face that it lies on",
  }),
  insideTurn: setting({
    name: "inside turn",
    takes: choiceOrLength(["auto", "full"], { examples: ["20", "3/4 in"] }),
    fallback: "auto",
    byDefault: "auto: full; the turn-in where walls are lined before assembly",
    meaning: "how far the covering runs down inside a wall; full runs down and on to the floor",
  }),
  liningOrder: setting({
    name: "lining order",
    takes: choice("auto", "before", "after"),
    fallback: "auto",
    byDefault: "auto: before where the inside is deeper than 80 mm or than half its short side",
    meaning:
      "walls are lined before the boards are put together, under a short turn-in, or after, where the covering leaves them bare",
    standing: "from memory",
    option: true,
  }),
  coverStyle: setting({
    name: "cover style",
    takes: choice("strip", "one piece"),
    fallback: "strip",
    meaning: "a tray covered by a wall strip and panels, or by one piece with cut corners",
    standing: "common practice",
    option: true,
  }),
} as const;
