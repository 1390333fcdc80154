import type { Argument, Cell, CellError } from "../runtime/marshal";

/** Where the cells, names and functions of a formula come from. */
export interface Sheet {
  /** `$B5`, without its dollars. */
  readonly cell: (name: string) => Cell | Promise<Cell>;
  readonly range: (name: string) => readonly (readonly Cell[])[];
  /** Whether numbers have a decimal comma, as in an Excel in French or German. */
  readonly comma?: boolean;
  /** A stored cell function: `ENC_BOARD_AREA`. */
  readonly call: (name: string, args: readonly Argument[]) => Promise<Cell>;
}

type Value = Cell | readonly (readonly Cell[])[];
type Node = (sheet: Sheet) => Promise<Value>;

/**
 * Calculates a formula in its stored form as Excel does, for the operators and functions that a filled survey uses. Errors
 * pass through operators and are handed to cell functions, which the add-in asks Excel for.
 *
 * @throws Error for anything else, so that no test passes by skipping
 */
export async function evaluate(formula: string, sheet: Sheet): Promise<Cell> {
  let parsed = known.get(formula);
  if (parsed === undefined) known.set(formula, (parsed = parse(formula)));
  return single(await parsed(sheet));
}

const known = new Map<string, Node>();

const TOKEN =
  /\s*(?:("(?:[^"]|"")*")|(#N\/A|#VALUE!)|(\d+(?:\.\d+)?)|(\$?[A-Z]{1,3}\$?\d+)(?![A-Za-z0-9_(])|([A-Za-z_][A-Za-z0-9_.]*)|(<>|<=|>=|[=<>&*+\-/(),{};]))/gy;

function tokens(formula: string): readonly string[] {
  const found: string[] = [];
  TOKEN.lastIndex = 0;
  while (TOKEN.lastIndex < formula.length) {
    const at = TOKEN.lastIndex;
    const match = TOKEN.exec(formula);
    if (match === null) throw new Error(`formula not understood at "${formula.slice(at, at + 20)}": ${formula}`);
    found.push(match[0].trim());
  }
  return found;
}

function parse(formula: string): Node {
  const all = tokens(formula);
  let at = 0;
  const next = () => all[at];
  const take = (wanted?: string): string => {
    const token = all[at++];
    if (token === undefined || (wanted !== undefined && token !== wanted))
      throw new Error(`expected ${wanted ?? "more"}, found ${token ?? "the end"}: ${formula}`);
    return token;
  };
  const chain = (part: () => Node, operators: readonly string[]): Node => {
    let left = part();
    while (operators.includes(next() ?? "")) {
      const operator = take();
      const [a, b] = [left, part()];
      left = async (sheet) => apply(operator, single(await a(sheet)), single(await b(sheet)), sheet.comma === true);
    }
    return left;
  };
  const comparison = (): Node => chain(joined, ["=", "<>", "<", ">", "<=", ">="]);
  const joined = (): Node => chain(product, ["&"]);
  const product = (): Node => chain(primary, ["*"]);
  const list = (): readonly Node[] => {
    take("(");
    const args: Node[] = [];
    while (next() !== ")") {
      args.push(comparison());
      if (next() === ",") take();
    }
    take(")");
    return args;
  };
  const primary = (): Node => {
    const token = take();
    if (token === "(") {
      const inside = comparison();
      take(")");
      return inside;
    }
    if (token === "-") {
      const positive = primary();
      return async (sheet) => apply("*", -1, single(await positive(sheet)), sheet.comma === true);
    }
    if (token === "{") return constantTable();
    if (token.startsWith('"')) return constant(text(token));
    if (token.startsWith("#")) return constant({ error: token });
    if (/^\d/.test(token)) return constant(Number(token));
    if (next() === "(") return call(token, list());
    if (/^\$?[A-Z]{1,3}\$?\d+$/.test(token)) return (sheet) => Promise.resolve(sheet.cell(token.replaceAll("$", "")));
    if (token === "TRUE" || token === "FALSE") return constant(token === "TRUE");
    return (sheet) => Promise.resolve(sheet.range(token));
  };
  const constantTable = (): Node => {
    const rows: Cell[][] = [[]];
    for (let token = take(); token !== "}"; token = take()) {
      if (token === ";") rows.push([]);
      else if (token !== ",") rows.at(-1)!.push(token.startsWith('"') ? text(token) : Number(token));
    }
    return () => Promise.resolve(rows);
  };
  const whole = comparison();
  if (at < all.length) throw new Error(`left over ${all.slice(at).join(" ")}: ${formula}`);
  return whole;
}

function text(token: string): string {
  return token.slice(1, -1).replaceAll('""', '"');
}

function constant(value: Cell): Node {
  return () => Promise.resolve(value);
}

function call(name: string, args: readonly Node[]): Node {
  const own = /^_xldudf_(ENC_.+)$/.exec(name)?.[1];
  if (own !== undefined) return async (sheet) => sheet.call(own, await Promise.all(args.map((each) => each(sheet))));
  if (name === "IFERROR")
    return async (sheet) => {
      const value = single(await args[0]!(sheet));
      return isError(value) ? args[1]!(sheet) : value;
    };
  if (name === "IF")
    return async (sheet) => {
      const test = single(await args[0]!(sheet));
      if (isError(test)) return test;
      const truth = truthOf(test);
      if (truth === undefined) return VALUE_ERROR;
      const chosen = args[truth ? 1 : 2];
      // A reference to a blank cell comes out of IF as 0.
      return chosen === undefined ? false : ((await chosen(sheet)) ?? 0);
    };
  const known = FUNCTIONS[name];
  if (known === undefined) throw new Error(`${name} is not modelled here`);
  return async (sheet) => {
    const values = (await Promise.all(args.map((each) => each(sheet)))).map(single);
    return known(values, (value) => joinable(value, sheet.comma === true));
  };
}

const VALUE_ERROR: CellError = { error: "#VALUE!" };

const FUNCTIONS: Readonly<Record<string, (args: readonly Cell[], text: (value: Cell) => string) => Cell>> = {
  AND: (args) => logical(args, (truths) => truths.every(Boolean)),
  OR: (args) => logical(args, (truths) => truths.some(Boolean)),
  ISNUMBER: ([value]) => typeof value === "number",
  CHAR: ([code = null]) => String.fromCharCode(Number(code)),
  // Texts given outright count as numbers where they read as such; here all are numbers or errors.
  MAX: (args) => args.find(isError) ?? Math.max(...args.map(Number)),
  SUM: (args) => args.find(isError) ?? args.reduce<number>((sum, each) => sum + Number(each), 0),
  MID: ([value = null, from = null, length = null], text) =>
    isError(value) ? value : text(value).slice(Number(from) - 1, Number(from) - 1 + Number(length)),
  LOWER: ([value = null], text) => (isError(value) ? value : text(value).toLowerCase()),
  FIND: ([wanted = null, within = null], text) => {
    if (isError(wanted)) return wanted;
    const at = text(within).indexOf(text(wanted));
    return at < 0 ? VALUE_ERROR : at + 1;
  },
  SUBSTITUTE: ([value = null, old = null, fresh = null], text) =>
    isError(value) ? value : text(value).replaceAll(text(old), text(fresh)),
  TRIM: ([value = null], text) => (isError(value) ? value : text(value).trim().replace(/ +/g, " ")),
};

function logical(args: readonly Cell[], decide: (truths: readonly boolean[]) => boolean): Cell {
  const error = args.find(isError);
  if (error !== undefined) return error;
  const truths = args.map(truthOf);
  return truths.every((each) => each !== undefined) ? decide(truths) : VALUE_ERROR;
}

function truthOf(value: Cell): boolean | undefined {
  if (typeof value === "boolean") return value;
  if (typeof value === "number") return value !== 0;
  return value === null ? false : undefined;
}

function apply(operator: string, left: Cell, right: Cell, comma: boolean): Cell {
  if (isError(left)) return left;
  if (isError(right)) return right;
  if (operator === "&") return joinable(left, comma) + joinable(right, comma);
  if (operator === "*") {
    const [a, b] = [number(left, comma), number(right, comma)];
    return a === undefined || b === undefined ? VALUE_ERROR : a * b;
  }
  const order = compared(left, right);
  if (operator === "=") return order === 0;
  if (operator === "<>") return order !== 0;
  if (operator === "<") return order < 0;
  if (operator === ">") return order > 0;
  return operator === "<=" ? order <= 0 : order >= 0;
}

/** Numbers before texts before truths; texts without regard to case; a blank is 0, empty text or false. */
function compared(left: Cell, right: Cell): number {
  const [a, b] = [left ?? blankLike(right), right ?? blankLike(left)];
  if (typeof a === "string" && typeof b === "string") return sign(a.toLowerCase(), b.toLowerCase());
  if (typeof a === typeof b) return sign(Number(a), Number(b));
  return sign(RANKS.indexOf(typeof a), RANKS.indexOf(typeof b));
}

const RANKS = ["number", "string", "boolean"];

function sign<T extends number | string>(a: T, b: T): number {
  if (a === b) return 0;
  return a < b ? -1 : 1;
}

function blankLike(other: Cell): Cell {
  if (typeof other === "string") return "";
  return typeof other === "boolean" ? false : 0;
}

/** As many figures of a number as Excel shows. */
const FIGURES = 15;

function joinable(value: Cell, comma: boolean): string {
  if (typeof value === "number") {
    const text = String(Number(value.toPrecision(FIGURES)));
    return comma ? text.replace(".", ",") : text;
  }
  if (typeof value === "boolean") return value ? "TRUE" : "FALSE";
  return value === null ? "" : String(value);
}

function number(value: Cell, comma: boolean): number | undefined {
  if (typeof value !== "string") return Number(value ?? 0);
  // Points between groups of three figures, which a comma locale takes for thousands.
  const plain = comma
    ? value
        .replace(/\.(?=\d{3}(?!\d))/g, "")
        .replace(",", "!")
        .replace(".", "?")
    : value;
  return /^\s*-?\d+(?:[.!]\d+)?\s*$/.test(plain) && !(comma && plain.includes("."))
    ? Number(plain.replace("!", "."))
    : undefined;
}

function single(value: Value): Cell {
  if (!Array.isArray(value)) return value as Cell;
  throw new Error("a range where one value is wanted");
}

export function isError(value: unknown): value is CellError {
  return typeof value === "object" && value !== null && "error" in value;
}
