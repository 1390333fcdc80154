import { BOARD_KINDS, CARD_KINDS, readBoardGuide, type BoardGuide } from "./boardGuide";

/** Headings of the board guide, as `ENC.BOARD.GUIDE` shows them. */
export const GUIDE_HEADINGS = [
  "kind",
  "material",
  "short side up to (mm)",
  "long side up to (mm)",
  "thickness up to (mm)",
  "weight up to (kg)",
  "board",
  "standing",
] as const;

const SIZES =
  "sizes after workshop pages and published examples, weight from memory; no published table of board by weight";
const MEMORY = "from memory; no published table of board by weight";
const FOLDING = "corrugated or folding board; from memory";
const CARD = "thickness after NEDCC leaflet 4.6 and a university library's pages, weight from memory";

/**
 * The starter board guide, to copy and edit. No published table of board by weight was found: weights are from memory.
 * Sizes: workshop pages (1.5 mm for small books and boxes, 2 mm for 4 x 5 to 8 x 10 in, 2.5 mm above). Cards of 10 and
 * 20 pt by thickness: NEDCC Preservation Leaflet 4.6, Duke University Libraries. What else it says is from memory.
 */
export const GUIDE_CELLS: readonly (readonly (number | string)[])[] = [
  [...GUIDE_HEADINGS],
  ["folded clamshell", "", "", "", 40, 1.5, "1.6 mm", FOLDING],
  ["folded clamshell", "", "", "", 100, 5, "3 mm", FOLDING],
  ["folded clamshell", "", "", "", "", "", "3 mm", `${FOLDING}; above these limits consider another support`],
  [BOARD_KINDS, "", 105, 150, 60, 0.3, "1.5 mm", MEMORY],
  [BOARD_KINDS, "", 210, 260, 120, 1.5, "2 mm", SIZES],
  [BOARD_KINDS, "", 150, "", "", 3.5, "2.5 mm", MEMORY],
  [BOARD_KINDS, "", 300, 420, "", 3.5, "2.5 mm", SIZES],
  [BOARD_KINDS, "", 420, 600, "", 7, "3 mm", SIZES],
  [BOARD_KINDS, "", 300, "", "", 5, "3 mm", MEMORY],
  [BOARD_KINDS, "", 700, 1200, "", 12, "2 x 2 mm", MEMORY],
  [BOARD_KINDS, "", "", "", "", "", "2 x 3 mm", `${MEMORY}; above these limits consider another support`],
  [CARD_KINDS, "", "", "", 6, 0.15, "10 pt", CARD],
  [CARD_KINDS, "", "", "", 25, 0.8, "20 pt", CARD],
  [CARD_KINDS, "", "", "", 50, 2.5, "40 pt", MEMORY],
  [CARD_KINDS, "", "", "", "", "", "60 pt", `${MEMORY}; a box would hold it better`],
];

/** The same as it is read: in force where a survey brings no guide of its own. */
export const STARTER_GUIDE: BoardGuide = readBoardGuide(GUIDE_CELLS, { unit: "mm", shopUnit: "mm", stock: [] });
