import { setting } from "../definition";
import { wholeNumber } from "../numberValues";
import { choice, yesNo, yesNoOrStock } from "../wordValues";

const construction = choice("around base", "on base", "flanged base");

/** How trays are put together. */
export const BUILD_SETTINGS = {
  construction: setting({
    name: "construction",
    takes: construction,
    byDefault: "by kind: slipcase on base, clamshell around base, else flanged base",
    meaning: "where the walls stand: around the base, on it, or around it on a card flange",
    standing: "common practice",
    option: true,
  }),
  lidConstruction: setting({
    name: "lid construction",
    takes: construction,
    fallback: "on base",
    meaning: "the same for a lid; on base leaves no joint under the covering of its top",
    standing: "common practice",
    option: true,
  }),
  through: setting({
    name: "through",
    takes: choice("side", "head"),
    byDefault: "by kind: clamshell head, else side",
    meaning: "which walls run past the corner and cover the ends of the others",
    standing: "common practice",
    option: true,
  }),
  wallLayers: setting({
    name: "wall layers",
    takes: wholeNumber(1, 2),
    fallback: 1,
    meaning: "one ring of walls, or two with staggered corners",
    option: true,
  }),
  endCards: setting({
    name: "end cards",
    takes: yesNo,
    fallback: false,
    meaning: "card laminated over the two faces that show the ends of the through walls",
    option: true,
  }),
  fold: setting({
    name: "fold",
    takes: choice("cut", "crease"),
    fallback: "cut",
    meaning: "folded tray: board cut part-way and folded, or thin board creased, with tabs",
    option: true,
  }),
  jointStrips: setting({
    name: "joint strips",
    takes: yesNoOrStock,
    byDefault: "yes; no when creased",
    meaning: "folded tray: strips over the four corner joints, of the lining paper unless another stock is named",
    standing: "common practice",
    option: true,
  }),
} as const;
