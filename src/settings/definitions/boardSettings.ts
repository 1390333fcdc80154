import type { Mm } from "../../measure/units";
import { setting } from "../definition";
import { lengthOrNone, stepOrNone } from "../lengthValues";
import { massOrNone, massOrUnknown } from "../massValues";
import { modulus, numberOrNone, percentage, positiveOrNone } from "../numberValues";
import { anything, text } from "../wordValues";

/** Step of the inside sizes, where none is given. */
export const DEFAULT_STEP_MM: Mm = 0.5;
/** The same in a workbook in inches, as a part of an inch. */
export const DEFAULT_STEP_PARTS = 32;

/** Settings that an older settings sheet holds, and that are read without effect. */
const WITHOUT_EFFECT = "no effect any more: the board guide chooses the board; delete the row";

const humidity = { takes: percentage, unit: "%RH", standing: "from memory" } as const;
const expansion = {
  takes: numberOrNone({ what: "a number" }, { most: 10 }),
  unit: "mm/m per %RH",
  standing: "from memory",
} as const;

/** What is known of board, item and air: how stiff, how heavy, how they move, and how far they are off. */
export const BOARD_SETTINGS = {
  roundTo: setting({
    name: "round to",
    takes: stepOrNone,
    byDefault: `${DEFAULT_STEP_MM} mm (1/${DEFAULT_STEP_PARTS} in when unit is in)`,
    meaning: "step of the inside sizes, always up",
  }),
  weight: setting({
    name: "weight",
    takes: massOrUnknown("1.2", "850 g", "2 lb"),
    byDefault: "not given",
    meaning: "the row's weight, where a function has no weight argument and a board is auto; none: by size alone",
  }),
  material: setting({
    name: "material",
    takes: text({ what: "what the item is made of", examples: ["paper", "leather", "photograph"] }),
    fallback: "",
    byDefault: "-",
    meaning: "what the item is made of: cautions name stocks that do not suit it, and the board guide may name it",
  }),
  itemDensity: setting({
    name: "item density",
    takes: positiveOrNone("kilograms to the cubic metre"),
    fallback: undefined,
    unit: "kg/m3",
    meaning: "used only where a weight is missing; a caution then says that it was estimated",
  }),
  modulusAlong: setting({
    name: "modulus along",
    takes: modulus,
    fallback: 2,
    unit: "GPa",
    meaning: "stiffness of board along its grain; measure your own board",
    standing: "from memory",
  }),
  modulusAcross: setting({
    name: "modulus across",
    takes: modulus,
    fallback: 1,
    unit: "GPa",
    meaning: "stiffness of board across its grain; measure your own board",
    standing: "from memory",
  }),
  creep: setting({
    name: "creep",
    takes: anything,
    byDefault: "-",
    meaning: WITHOUT_EFFECT,
    retired: true,
  }),
  sagRatio: setting({
    name: "sag ratio",
    takes: anything,
    byDefault: "-",
    meaning: WITHOUT_EFFECT,
    retired: true,
  }),
  sagLimit: setting({
    name: "sag limit",
    takes: anything,
    byDefault: "-",
    meaning: WITHOUT_EFFECT,
    retired: true,
  }),
  stackAbove: setting({
    name: "stack above",
    takes: massOrNone("12", "25 lb"),
    fallback: 0,
    meaning: "what is stored on top of a box lying flat; a caution says when its top springs under it",
  }),
  humidityMade: setting({
    ...humidity,
    name: "humidity when made",
    fallback: 50,
    meaning: "relative humidity when the item is measured and the board cut",
  }),
  humidityLeast: setting({
    ...humidity,
    name: "humidity least",
    fallback: 35,
    meaning: "driest air of the store's year",
  }),
  humidityGreatest: setting({
    ...humidity,
    name: "humidity greatest",
    fallback: 65,
    meaning: "dampest air of the store's year",
  }),
  expansionAlong: setting({
    ...expansion,
    name: "expansion along",
    fallback: 0.04,
    meaning: "growth of board along its grain with the humidity of the air",
  }),
  expansionAcross: setting({
    ...expansion,
    name: "expansion across",
    fallback: 0.15,
    meaning: "growth of board across its grain with the humidity of the air",
  }),
  itemExpansion: setting({
    ...expansion,
    name: "item expansion",
    fallback: 0.1,
    meaning: "growth of the item with the humidity of the air, in every direction",
  }),
  measuringError: setting({
    name: "measuring error",
    takes: lengthOrNone,
    fallback: 0.5,
    meaning: "how far a measured size may be off, either way",
    standing: "from memory",
  }),
  cuttingError: setting({
    name: "cutting error",
    takes: lengthOrNone,
    fallback: 0.3,
    meaning: "how far a cut may be off, either way",
    standing: "from memory",
  }),
  caliperTolerance: setting({
    name: "caliper tolerance",
    takes: lengthOrNone,
    fallback: 0.05,
    meaning: "how far a board's caliper may be off, either way",
    standing: "from memory",
  }),
  adhesive: setting({
    name: "adhesive",
    takes: numberOrNone({ what: "grams to the square metre" }),
    fallback: 80,
    unit: "g/m2",
    meaning: "adhesive that stays under covering, lining and laminated card",
    standing: "from memory",
  }),
} as const;
