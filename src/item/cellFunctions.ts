/** What a formula must know of a cell function that answers for one item: its id is its name after `ENC.`. */
interface ItemFunction {
  /** How it learns the weight: by an argument after the sizes, or among the settings, for boards that are auto. */
  readonly weight: "argument" | "setting";
}

/** The cell functions of one item. */
export const ITEM_FUNCTIONS = {
  INSIDE: { weight: "setting" },
  OUTSIDE: { weight: "setting" },
  "BASE.SIZE": { weight: "setting" },
  "WALL.LENGTH": { weight: "setting" },
  "WALL.HEIGHT": { weight: "setting" },
  "COVER.BLANK": { weight: "setting" },
  PART: { weight: "setting" },
  PARTS: { weight: "setting" },
  "BOARD.AREA": { weight: "setting" },
  "BOARD.CALIPER": { weight: "argument" },
  "BOARD.STOCK": { weight: "argument" },
  "BASE.SAG": { weight: "argument" },
  "FIT.RANGE": { weight: "setting" },
  MASS: { weight: "setting" },
  CAUTIONS: { weight: "argument" },
  PROBLEM: { weight: "setting" },
  SIZE: { weight: "setting" },
} as const satisfies Readonly<Record<string, ItemFunction>>;

export type ItemFunctionId = keyof typeof ITEM_FUNCTIONS;

/** Every cell function. */
export type FunctionId =
  | ItemFunctionId
  | "MEASURE"
  | "DIMENSIONS"
  | "FRACTION"
  | "BOARD.MODULUS"
  | "SURVEY"
  | "CUTLIST"
  | "SHEETS"
  | "LAYOUT"
  | "ESTIMATE"
  | "SHELF"
  | "SIZES"
  | "SETTINGS"
  | "STOCK"
  | "BOARD.GUIDE"
  | "KINDS";
