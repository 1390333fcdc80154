import type { Settings } from "../../settings/schema";
import type { Assembly } from "../assembly";
import { CLOSURE_HERE } from "../order";
import type { Step } from "../step";

/** How a folded clamshell is made: of two blanks hinged to a spine piece, or of one. */
export function foldedClamshellOrder({ cover }: Assembly, { covering }: Settings): readonly Step[] {
  return cover === undefined ? CREASED : hinged(covering);
}

const CREASED: readonly Step[] = [
  {
    text: "Cut the blank square, flutes parallel to the spine; then both edges in steps, and free the tabs, as drawn.",
    parts: [],
    caution: "blade",
  },
  {
    text: "Crease the blank at its folds along a rule with a bone folder, on the inside.",
    parts: ["blank"],
  },
  {
    text: "Fold both trays up dry: head walls, tabs, then the fore-edge walls over the tabs and down to the base. Close the box: the large tray must slide on without a push.",
    parts: [],
  },
  {
    text: "Open it, glue both faces of the tabs, fold over and clip until dry.",
    parts: [],
    caution: "adhesive",
  },
  CLOSURE_HERE,
  { text: "When dry, close the box and check that it opens flat.", parts: [] },
];

function hinged(covering: Settings["covering"]): readonly Step[] {
  return [
    {
      text: "Cut the small blank square, with the flutes parallel to the spine; then the corners and tabs as listed.",
      parts: [],
      caution: "blade",
    },
    {
      text: "Crease the small blank at its folds along a rule with a bone folder, on the inside; fold the walls up and the tabs inside the fore-edge wall, and glue the tabs.",
      parts: ["small blank"],
      caution: "adhesive",
    },
    { text: "Measure the small tray before the large blank is cut: the large tray is made to it.", parts: [] },
    {
      text: "Cut, crease and fold the large blank in the same way, with its tabs outside the fore-edge wall, and glue the tabs.",
      parts: ["large blank"],
      caution: "blade",
    },
    { text: "Close the large tray over the small one, dry: it must slide on without a push.", parts: [] },
    {
      text: `Lay small tray, spine piece and large tray flat in a row, outsides up, a board's thickness apart, and join them ${covering === "none" ? "with hinges of your own" : "with a hinge strip of cloth over each gap"}.`,
      parts: ["spine piece", ...(covering === "none" ? [] : ["hinge strip"])],
      caution: "adhesive",
    },
    CLOSURE_HERE,
    { text: "When dry, close the box and check that it opens flat.", parts: [] },
  ];
}
