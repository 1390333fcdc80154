import type { Mm, WorkbookUnit } from "../measure/units";
import {
  board,
  choice,
  choiceOrLength,
  hoursByKind,
  lengthAbove,
  lengthOrNone,
  mass,
  massOrNone,
  modulus,
  numberFrom,
  positive,
  positiveOrNone,
  stepOrNone,
  stockName,
  text,
  twoFractions,
  yesNo,
  type Board,
  type Reader,
} from "./readers";
import type { StockRow } from "./stock";

/**
 * Where a default comes from. `common practice`: a habit of the trade with no source. `shop`: a default of this
 * project that every workshop changes. `from memory`: a number to replace by a measurement of your own.
 */
export type Standing = "common practice" | "shop" | "from memory";

export interface Definition<T> {
  readonly name: string;
  readonly read: Reader<T>;
  /** The value when nothing is given; undefined where the kind of enclosure or another setting decides. */
  readonly fallback: T;
  /** The default in words. */
  readonly defaultText: string;
  /** What it accepts, as it ends the sentence "give ...". */
  readonly accepts: string;
  readonly unit: string;
  readonly meaning: string;
  readonly standing: Standing;
  /** An option of some kinds only: refused in a row's own text when the row's kind has no use for it. */
  readonly option: boolean;
}

export type Construction = "around base" | "on base" | "flanged base";
export type Fit = "snug" | "standard" | "loose" | Mm;

const length = "a length such as 2, 2 mm or 1/16 in, or none";
const boardAccepts = "a board or card of the stock table, or a caliper from 0.3 to 10 mm, such as 2, 2 mm or 80 pt";
const fits = "snug, standard, loose, a length such as 2 or 1/16 in, or none";
const constructions = "around base, on base or flanged base";

const fit = choiceOrLength("snug", "standard", "loose") as Reader<Fit | undefined>;
const construction = choice("around base", "on base", "flanged base");

/** Every setting, in the order in which they are shown. */
export const DEFINITIONS = {
  unit: define("unit", choice("mm", "cm", "in"), "mm" as WorkbookUnit, "mm", {
    accepts: "mm, cm or in",
    meaning: "what plain item numbers mean and what answers are in",
  }),
  shopUnit: define("shop unit", choice("mm", "cm", "in"), "mm" as WorkbookUnit, "mm", {
    accepts: "mm, cm or in",
    meaning: "what plain lengths in settings and stock mean, whatever unit is",
  }),
  fit: define<Fit | undefined>("fit", fit, undefined, "by kind: snug for slipcase and wrapper, else standard", {
    accepts: fits,
    unit: "length",
    meaning: "free play of the item in each direction: snug 1 mm, standard 2 mm, loose 3 mm",
    standing: "common practice",
  }),
  fitHeight: define<Fit | undefined>("fit height", fit, undefined, "as fit", {
    accepts: fits,
    unit: "length",
    meaning: "free play in height alone",
    standing: "common practice",
  }),
  fitWidth: define<Fit | undefined>("fit width", fit, undefined, "as fit; none for a slipcase", {
    accepts: fits,
    unit: "length",
    meaning: "free play in width alone",
    standing: "common practice",
  }),
  fitDepth: define<Fit | undefined>("fit depth", fit, undefined, "as fit", {
    accepts: fits,
    unit: "length",
    meaning: "free play in depth alone",
    standing: "common practice",
  }),
  coveringAllowance: define("covering allowance", lengthOrNone, 1, "1 mm", {
    accepts: length,
    unit: "length",
    meaning: "covering and adhesive on both faces of a direction together; half of it lies on one face",
    standing: "common practice",
  }),
  cushionBase: define("cushion base", lengthOrNone, 0, "none", {
    accepts: length,
    unit: "length",
    meaning: "cushioning under the item, added to the inside before rounding",
  }),
  cushionSides: define("cushion sides", lengthOrNone, 0, "none", {
    accepts: length,
    unit: "length",
    meaning: "cushioning on each of the four sides of the item",
  }),
  cushionTop: define("cushion top", lengthOrNone, 0, "none", {
    accepts: length,
    unit: "length",
    meaning: "cushioning over the item",
  }),
  restsOn: define("rests on", choice("back", "foot", "edge"), "back", "back", {
    accepts: "back, foot or edge",
    meaning:
      "which way the object lies: on its back (its depth is the tray's depth), foot (its height is), edge (its width is)",
    standing: "common practice",
  }),
  construction: option<Construction | undefined>(
    "construction",
    construction,
    undefined,
    "by kind: slipcase on base, clamshell around base, else flanged base",
    {
      accepts: constructions,
      meaning: "where the walls stand: around the base, on it, or around it on a card flange",
      standing: "common practice",
    },
  ),
  lidConstruction: option("lid construction", construction, "on base" as Construction, "on base", {
    accepts: constructions,
    meaning: "the same for a lid; on base leaves no joint under the covering of its top",
    standing: "common practice",
  }),
  through: option<"side" | "head" | undefined>(
    "through",
    choice("side", "head"),
    undefined,
    "by kind: clamshell head, else side",
    {
      accepts: "side or head",
      meaning: "which walls run past the corner and cover the ends of the others",
      standing: "common practice",
    },
  ),
  wallLayers: option("wall layers", numberFrom(1, { most: 2, whole: true }), 1, "1", {
    accepts: "1 or 2",
    meaning: "one ring of walls, or two with staggered corners",
  }),
  endCards: option("end cards", yesNo, false, "no", {
    accepts: "yes or no",
    meaning: "card laminated over the two faces that show the ends of the through walls",
  }),
  fold: option("fold", choice("cut", "crease"), "cut", "cut", {
    accepts: "cut or crease",
    meaning: "folded tray: board cut part-way and folded, or thin board creased, with tabs",
  }),
  jointStrips: option<boolean | undefined>("joint strips", yesNo, undefined, "yes; no when creased", {
    accepts: "yes or no",
    meaning: "folded tray: strips of paper or thin card over the four corner joints",
    standing: "common practice",
  }),
  wallBoard: define<Board | "auto" | undefined>("wall board", board("board", true), undefined, "2 mm", {
    accepts: `${boardAccepts}, or auto`,
    unit: "length",
    meaning: "board of the walls, its caliper as measured; auto takes the board that the row's weight needs",
  }),
  baseBoard: define<Board | "auto" | undefined>("base board", board("board", true), undefined, "the wall board", {
    accepts: `${boardAccepts}, or auto`,
    unit: "length",
    meaning: "board of the bases; auto takes the board that the row's weight needs",
  }),
  caseBoard: option<Board | undefined>("case board", board("board"), undefined, "the wall board", {
    accepts: boardAccepts,
    unit: "length",
    meaning: "board of a clamshell's case",
  }),
  flangeCard: option<Board | undefined>("flange card", board("card"), undefined, "0.4 mm", {
    accepts: boardAccepts,
    unit: "length",
    meaning: "card under a flanged base, and of end cards",
  }),
  wrapperCard: option<Board | undefined>("wrapper card", board("card"), undefined, "0.4 mm", {
    accepts: boardAccepts,
    unit: "length",
    meaning: "card of a four-flap wrapper",
  }),
  cardTrim: define("card trim", lengthOrNone, 10, "10 mm", {
    accepts: length,
    unit: "length",
    meaning: "what a laminated card is cut larger by on each edge, to be trimmed flush",
  }),
  covering: define<string | undefined>("covering", stockName, undefined, "the first covering of the stock table", {
    accepts: "a name of the stock table, or none",
    meaning: "covering stock; none leaves the enclosure without covering pieces",
  }),
  lining: define<string | undefined>("lining", stockName, undefined, "the first lining of the stock table", {
    accepts: "a name of the stock table, or none",
    meaning: "lining stock; none leaves the linings out",
  }),
  turnIn: define("turn-in", lengthAbove, 15, "15 mm", {
    accepts: "a length above zero such as 15, 15 mm or 5/8 in",
    unit: "length",
    meaning: "covering turned in over an edge; never longer than half the face that it lies on",
  }),
  insideTurn: option<"full" | Mm>("inside turn", choiceOrLength("full"), "full", "full", {
    accepts: "full or a length such as 20 or 3/4 in",
    unit: "length",
    meaning: "how far the covering runs down inside a wall; full runs down and on to the floor",
  }),
  coverStyle: option("cover style", choice("strip", "one piece"), "strip", "strip", {
    accepts: "strip or one piece",
    meaning: "a tray covered by a wall strip and panels, or by one piece with cut corners",
    standing: "common practice",
  }),
  lidDepth: option<"full" | Mm>("lid depth", choiceOrLength("full"), "full", "full", {
    accepts: "full or a length such as 30 or 1 1/4 in",
    unit: "length",
    meaning: "how far the lid reaches down the box",
  }),
  lidReveal: option("lid reveal", lengthOrNone, 3, "3 mm", {
    accepts: length,
    unit: "length",
    meaning: "what shows of the box below a closed full-depth lid",
  }),
  lidClearance: option("lid clearance", lengthOrNone, 1, "1 mm", {
    accepts: length,
    unit: "length",
    meaning: "total play of a lid over its box, in each direction",
  }),
  neck: option<"auto" | Mm>("neck", choiceOrLength("auto"), "auto", "auto: 10 mm, at most a third of the inner tray", {
    accepts: "auto or a length such as 10 or 3/8 in",
    unit: "length",
    meaning: "three-tray box: what stands of the inner tray above the bottom",
  }),
  nestClearance: option("nest clearance", lengthOrNone, 1, "1 mm", {
    accepts: length,
    unit: "length",
    meaning: "total play of nested trays, in each direction",
  }),
  square: option("square", lengthOrNone, 3, "3 mm", {
    accepts: length,
    unit: "length",
    meaning: "clamshell: what the case stands out beyond its trays",
    standing: "common practice",
  }),
  joint: option<"auto" | Mm>("joint", choiceOrLength("auto"), "auto", "auto: 2 case boards + 2 coverings", {
    accepts: "auto or a length such as 5 or 3/16 in",
    unit: "length",
    meaning: "clamshell: gap between case board and spine",
    standing: "common practice",
  }),
  hingeLap: option("hinge lap", lengthAbove, 25, "25 mm", {
    accepts: "a length above zero such as 25 or 1 in",
    unit: "length",
    meaning: "clamshell: what the spine lining laps on to each case board",
  }),
  flaps: option("flaps", twoFractions, [1, 0.5] as readonly [number, number], "1 / 0.5", {
    accepts: "two fractions of the panel from 0.1 to 1, such as 1 / 0.5",
    meaning: "four-flap wrapper: length of the two flaps of each piece",
    standing: "common practice",
  }),
  roundTo: define<Mm | undefined>("round to", stepOrNone, undefined, "0.5 mm (1/32 in when unit is in)", {
    accepts: "a step from 0.01 mm such as 0.5, 0.5 mm or 1/32 in, or none",
    unit: "length",
    meaning: "step of the inside sizes, always up",
  }),
  weight: define<number | undefined>("weight", mass, undefined, "not given", {
    accepts: "a weight such as 1.2, 850 g or 2 lb",
    unit: "mass",
    meaning: "the row's weight, where a function has no weight argument and a board is auto",
  }),
  itemDensity: define<number | undefined>("item density", positiveOrNone, undefined, "none", {
    accepts: "kilograms to the cubic metre, or none",
    unit: "kg/m3",
    meaning: "used only where a weight is missing; a caution then says that it was estimated",
  }),
  modulusAlong: define("modulus along", modulus, 2, "2", {
    accepts: "a number of GPa from 0.001 to 1000, such as 2",
    unit: "GPa",
    meaning: "stiffness of board along its grain; measure your own board",
    standing: "from memory",
  }),
  modulusAcross: define("modulus across", modulus, 1, "1", {
    accepts: "a number of GPa from 0.001 to 1000, such as 2",
    unit: "GPa",
    meaning: "stiffness of board across its grain; measure your own board",
    standing: "from memory",
  }),
  creep: define("creep", positive, 2, "2", {
    accepts: "a multiplier above zero",
    meaning: "what the sag grows to over the years",
    standing: "from memory",
  }),
  sagRatio: define("sag ratio", positive, 150, "150", {
    accepts: "a number above zero",
    meaning: "the sag may be at most the short span over this",
  }),
  sagLimit: define("sag limit", lengthAbove, 2, "2 mm", {
    accepts: "a length above zero such as 2, 2 mm or 1/16 in",
    unit: "length",
    meaning: "the sag may never be more than this",
  }),
  stackAbove: define("stack above", massOrNone, 0, "none", {
    accepts: "a weight such as 12 or 25 lb, or none",
    unit: "mass",
    meaning: "what is stored on top of a box lying flat; its top board must carry it too",
  }),
  humidityMade: define("humidity when made", numberFrom(0, { most: 100, suffix: "%" }), 50, "50", {
    accepts: "a percentage from 0 to 100",
    unit: "%RH",
    meaning: "relative humidity when the item is measured and the board cut",
    standing: "from memory",
  }),
  humidityLeast: define("humidity least", numberFrom(0, { most: 100, suffix: "%" }), 35, "35", {
    accepts: "a percentage from 0 to 100",
    unit: "%RH",
    meaning: "driest air of the store's year",
    standing: "from memory",
  }),
  humidityGreatest: define("humidity greatest", numberFrom(0, { most: 100, suffix: "%" }), 65, "65", {
    accepts: "a percentage from 0 to 100",
    unit: "%RH",
    meaning: "dampest air of the store's year",
    standing: "from memory",
  }),
  expansionAlong: define("expansion along", numberFrom(0, { most: 10 }), 0.04, "0.04", {
    accepts: "a number from 0 to 10, or none",
    unit: "mm/m per %RH",
    meaning: "growth of board along its grain with the humidity of the air",
    standing: "from memory",
  }),
  expansionAcross: define("expansion across", numberFrom(0, { most: 10 }), 0.15, "0.15", {
    accepts: "a number from 0 to 10, or none",
    unit: "mm/m per %RH",
    meaning: "growth of board across its grain with the humidity of the air",
    standing: "from memory",
  }),
  itemExpansion: define("item expansion", numberFrom(0, { most: 10 }), 0.1, "0.1", {
    accepts: "a number from 0 to 10, or none",
    unit: "mm/m per %RH",
    meaning: "growth of the item with the humidity of the air, in every direction",
    standing: "from memory",
  }),
  measuringError: define("measuring error", lengthOrNone, 0.5, "0.5 mm", {
    accepts: length,
    unit: "length",
    meaning: "how far a measured size may be off, either way",
    standing: "from memory",
  }),
  cuttingError: define("cutting error", lengthOrNone, 0.3, "0.3 mm", {
    accepts: length,
    unit: "length",
    meaning: "how far a cut may be off, either way",
    standing: "from memory",
  }),
  caliperTolerance: define("caliper tolerance", lengthOrNone, 0.05, "0.05 mm", {
    accepts: length,
    unit: "length",
    meaning: "how far a board's caliper may be off, either way",
    standing: "from memory",
  }),
  adhesive: define("adhesive", numberFrom(0), 80, "80", {
    accepts: "grams to the square metre, or none",
    unit: "g/m2",
    meaning: "adhesive that stays under covering, lining and laminated card",
    standing: "from memory",
  }),
  adhesivePrice: define("adhesive price", numberFrom(0), 0, "none", {
    accepts: "a price to the kilogram, or none",
    meaning: "price of a kilogram of adhesive",
  }),
  labourHours: define("labour hours", hoursByKind, [] as readonly (readonly [string, number])[], "none", {
    accepts: "hours by enclosure, such as tray 1.5 / clamshell box 4, or none",
    unit: "hours",
    meaning: "time to make one enclosure of each kind, where an estimate is to hold labour",
  }),
  labourRate: define("labour rate", numberFrom(0), 0, "none", {
    accepts: "a price to the hour, or none",
    meaning: "what an hour costs in an estimate",
  }),
  aboveShoulder: define("above shoulder", yesNo, false, "no", {
    accepts: "yes or no",
    meaning: "stored above the shoulder, where less may be lifted: lowers the weight that draws a caution",
  }),
  liftLimit: define("lift limit", mass, 23, "23 kg", {
    accepts: "a weight such as 23 or 50 lb",
    unit: "mass",
    meaning:
      "boxed weight that draws a caution, never a permission (NIOSH load constant); local manual-handling rules come first",
  }),
  edgeTrim: define("edge trim", lengthOrNone, 5, "5 mm", {
    accepts: length,
    unit: "length",
    meaning: "what is trimmed off each edge of a sheet before cutting",
  }),
  pieceGap: define("piece gap", lengthOrNone, 0, "none", {
    accepts: length,
    unit: "length",
    meaning: "what is lost between pieces at a cut",
  }),
  estimateBy: define("estimate by", text, "material", "material", {
    accepts: "material, kind, or a heading of the survey",
    meaning: "what an estimate is grouped by",
  }),
  contingency: define("contingency", numberFrom(0, { suffix: "%" }), 10, "10", {
    accepts: "a percentage above zero such as 10, or none",
    unit: "%",
    meaning: "added to an estimate for spoilt pieces and surprises",
  }),
  currency: define("currency", text, "", "-", { accepts: "a text", meaning: "written before every cost" }),
  order: define("order", text, "HWD", "HWD", {
    accepts: "the letters H, W and D (or L) in the order of the text, such as HWD or LWD",
    meaning: "order of the numbers in dimension texts",
  }),
  textUnit: define<"mm" | "cm" | "m" | "in" | "ft" | undefined>(
    "text unit",
    choice("mm", "cm", "m", "in", "ft") as Reader<"mm" | "cm" | "m" | "in" | "ft" | undefined>,
    undefined,
    "the workbook's unit",
    { accepts: "mm, cm, m, in or ft", meaning: "what numbers without a unit mean in dimension texts" },
  ),
} as const;

export type SettingKey = keyof typeof DEFINITIONS;

type Values = { readonly [K in SettingKey]: (typeof DEFINITIONS)[K]["fallback"] };

/** The settings in force for one row. Lengths in mm. */
export interface Settings extends Omit<Values, "wallBoard" | "baseBoard" | "flangeCard" | "wrapperCard" | "roundTo"> {
  readonly wallBoard: Board | "auto";
  /** Undefined: the wall board. */
  readonly baseBoard: Board | "auto" | undefined;
  readonly flangeCard: Board;
  readonly wrapperCard: Board;
  readonly roundTo: Mm;
  readonly stock: readonly StockRow[];
  /** Where each given value came from, in words. */
  readonly origins: ReadonlyMap<SettingKey, string>;
  /** Settings given in a row's own text or column. */
  readonly ownOfRow: ReadonlySet<SettingKey>;
}

interface Words {
  readonly accepts: string;
  readonly meaning: string;
  readonly unit?: string;
  readonly standing?: Standing;
}

function define<T>(name: string, read: Reader<T>, fallback: T, defaultText: string, words: Words): Definition<T> {
  return { name, read, fallback, defaultText, unit: "", standing: "shop", option: false, ...words };
}

function option<T>(name: string, read: Reader<T>, fallback: T, defaultText: string, words: Words): Definition<T> {
  return { ...define(name, read, fallback, defaultText, words), option: true };
}
