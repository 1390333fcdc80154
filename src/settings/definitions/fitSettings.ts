import { setting } from "../definition";
import { choiceOrLength, lengthOrNone } from "../lengthValues";
import { choice } from "../wordValues";

const fit = choiceOrLength(["snug", "standard", "loose"], { examples: ["2", "1/16 in"], none: true });

/** Said by itself, so that a sheet that lists every setting does not give `none`, and a well keeps its own. */
const UNPADDED = "none; 10 mm with a well";

/** Units, and the room that an item is given. */
export const FIT_SETTINGS = {
  surveyUnit: setting({
    name: "unit",
    otherNames: ["units"],
    takes: choice("mm", "cm", "in"),
    fallback: "mm",
    meaning: "what plain item numbers mean, and what answers are in unless answer unit says otherwise",
  }),
  answerUnit: setting({
    name: "answer unit",
    takes: choice("mm", "cm", "in"),
    byDefault: "as unit",
    meaning: "what answers are in, where that is another unit than that of the items; a later unit sets it too",
  }),
  shopUnit: setting({
    name: "shop unit",
    takes: choice("mm", "cm", "in"),
    fallback: "mm",
    meaning: "what plain lengths in settings and stock mean, whatever unit is",
  }),
  fit: setting({
    name: "fit",
    takes: fit,
    byDefault: "by kind: snug for slipcase, wrapper and portfolio, else standard",
    meaning: "free play of the item in each direction: snug 1 mm, standard 2 mm, loose 3 mm",
    standing: "common practice",
  }),
  fitHeight: setting({
    name: "fit height",
    takes: fit,
    byDefault: "as fit",
    meaning: "free play in height alone",
    standing: "common practice",
  }),
  fitWidth: setting({
    name: "fit width",
    takes: fit,
    byDefault: "as fit; none for a slipcase",
    meaning: "free play in width alone",
    standing: "common practice",
  }),
  fitDepth: setting({
    name: "fit depth",
    takes: fit,
    byDefault: "as fit",
    meaning: "free play in depth alone",
    standing: "common practice",
  }),
  coveringAllowance: setting({
    name: "covering allowance",
    takes: choiceOrLength(["auto"], { examples: ["1", "1/32 in"], none: true }),
    fallback: 1,
    meaning:
      "covering and adhesive on both faces of a direction together; half of it lies on one face; auto takes the calipers of covering and lining",
    standing: "common practice",
  }),
  cushionBase: setting({
    name: "cushion base",
    takes: lengthOrNone,
    fallback: 0,
    byDefault: UNPADDED,
    meaning: "cushioning under the item, added to the inside before rounding",
  }),
  cushionSides: setting({
    name: "cushion sides",
    takes: lengthOrNone,
    fallback: 0,
    byDefault: UNPADDED,
    meaning: "cushioning on each of the four sides of the item",
  }),
  cushionTop: setting({
    name: "cushion top",
    takes: lengthOrNone,
    fallback: 0,
    byDefault: UNPADDED,
    meaning: "cushioning over the item",
  }),
  restsOn: setting({
    name: "rests on",
    takes: choice("back", "foot", "edge"),
    fallback: "back",
    byDefault: "by kind: foot for a drop-front box, else back",
    meaning:
      "which way the object lies: on its back (its depth is the tray's depth), foot (its height is), edge (its width is)",
    standing: "common practice",
  }),
} as const;
