/** A value in one cell; `{ error }` is a cell that holds an error, such as `{ error: "#N/A" }`. */
export type Cell = string | number | boolean | null | CellError;

export interface CellError {
  readonly error: string;
}

/** What stands between two commas of a formula: a value, a range, or nothing. */
export type Argument = Cell | readonly (readonly Cell[])[] | undefined;

/** One parameter in functions.json. */
export interface ParameterMetadata {
  readonly name: string;
  readonly description?: string;
  readonly type?: string;
  readonly dimensionality?: "scalar" | "matrix";
  readonly optional?: boolean;
  readonly repeating?: boolean;
}

/** What reaches a function whose repeating argument was left off. Microsoft documents null only for plain ones. */
export type OmittedRepeat = "null" | "empty list";

/**
 * The arguments of a formula in the shapes in which Excel hands them to a cell function.
 *
 * @throws Error when Excel would refuse the formula itself
 */
export function marshal(
  parameters: readonly ParameterMetadata[],
  args: readonly Argument[],
  omittedRepeat: OmittedRepeat = "null",
): readonly unknown[] {
  const last = parameters.at(-1);
  if (args.length > parameters.length && last?.repeating !== true) {
    throw new Error(`Excel refuses the formula: ${args.length} arguments where ${parameters.length} are declared`);
  }
  return parameters.map((parameter, position) => {
    if (parameter.repeating === true) {
      const rest = args.slice(position);
      if (rest.length > 0) return rest.map((argument) => one(parameter, argument));
      return omittedRepeat === "null" ? null : [];
    }
    if (position >= args.length && parameter.optional !== true) {
      throw new Error(`Excel refuses the formula: ${parameter.name} is missing`);
    }
    return one(parameter, args[position]);
  });
}

const one = ({ name, type, dimensionality }: ParameterMetadata, argument: Argument): unknown => {
  if (type !== undefined && type !== "any") throw new Error(`${name}: conversion to ${type} is not modelled here`);
  if (argument === undefined) return null;
  if (dimensionality === "matrix") {
    return isRange(argument) ? argument.map((row) => row.map(wire)) : [[wire(argument)]];
  }
  if (!isRange(argument)) return wire(argument);
  const [cell, ...others] = argument.flat();
  if (cell === undefined || others.length > 0)
    throw new Error(`${name}: a range in a single value is not modelled here`);
  return wire(cell);
};

const isRange = (argument: Exclude<Argument, undefined>): argument is readonly (readonly Cell[])[] =>
  Array.isArray(argument);

const wire = (cell: Cell): unknown =>
  typeof cell === "object" && cell !== null ? { type: "CustomFunctionError", code: cell.error } : cell;
