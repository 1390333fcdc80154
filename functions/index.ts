import type { FunctionId } from "../src/item/cellFunctions";
import * as board from "./board";
import * as item from "./item";
import * as itemParts from "./itemParts";
import * as measuring from "./measuring";
import * as reference from "./reference";
import * as survey from "./survey";

// Ids as declared beside each function; a test holds the two lists equal.
CustomFunctions.associate({
  MEASURE: measuring.measure,
  DIMENSIONS: measuring.dimensions,
  FRACTION: measuring.fraction,
  INSIDE: item.inside,
  OUTSIDE: item.outside,
  "BASE.SIZE": item.baseSize,
  "WALL.LENGTH": item.wallLength,
  "WALL.HEIGHT": item.wallHeight,
  "COVER.BLANK": itemParts.coverBlank,
  PART: itemParts.part,
  PARTS: itemParts.parts,
  "BOARD.AREA": itemParts.boardArea,
  "BOARD.CALIPER": board.boardCaliper,
  "BOARD.STOCK": board.boardStock,
  "BASE.SAG": board.sag,
  "BOARD.MODULUS": board.boardModulus,
  "FIT.RANGE": board.fitRange,
  MASS: board.mass,
  CAUTIONS: board.cautions,
  PROBLEM: itemParts.problem,
  SURVEY: survey.survey,
  CUTLIST: survey.cutlist,
  SHEETS: survey.sheets,
  LAYOUT: survey.layout,
  ESTIMATE: survey.estimate,
  SHELF: survey.shelf,
  SIZES: survey.sizes,
  SIZE: survey.size,
  SETTINGS: reference.settings,
  STOCK: reference.stock,
  "BOARD.GUIDE": reference.boardGuide,
  KINDS: reference.kinds,
} satisfies Readonly<Record<FunctionId, unknown>>);
