/** A value in one cell; `{ error }` is a cell that holds an error, such as `{ error: "#N/A" }`. */
export type Cell = string | number | boolean | null | CellError | CellData;

/** A cell of a data type, such as a number with its format. */
export interface CellData {
  readonly type: string;
  readonly basicType: string;
  readonly basicValue: string | number | boolean;
}

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
 * @param dataTypes whether Excel may hand over its data types
 * @throws Error when Excel would refuse the formula itself
 */
export function marshal(
  parameters: readonly ParameterMetadata[],
  args: readonly Argument[],
  omittedRepeat: OmittedRepeat = "null",
  dataTypes = false,
): readonly unknown[] {
  const last = parameters.at(-1);
  if (args.length > parameters.length && last?.repeating !== true) {
    throw new Error(`Excel refuses the formula: ${args.length} arguments where ${parameters.length} are declared`);
  }
  return parameters.map((parameter, position) => {
    if (parameter.repeating === true) {
      const rest = args.slice(position);
      if (rest.length > 0) return rest.map((argument) => one(parameter, argument, dataTypes));
      return omittedRepeat === "null" ? null : [];
    }
    if (position >= args.length && parameter.optional !== true) {
      throw new Error(`Excel refuses the formula: ${parameter.name} is missing`);
    }
    return one(parameter, args[position], dataTypes);
  });
}

const one = ({ name, type, dimensionality }: ParameterMetadata, argument: Argument, dataTypes: boolean): unknown => {
  if (type !== undefined && type !== "any") throw new Error(`${name}: conversion to ${type} is not modelled here`);
  if (argument === undefined) return null;
  if (dimensionality === "matrix") {
    return isRange(argument)
      ? argument.map((row) => row.map((each) => wire(each, dataTypes)))
      : [[wire(argument, dataTypes)]];
  }
  if (!isRange(argument)) return wire(argument, dataTypes);
  const [cell, ...others] = argument.flat();
  if (cell === undefined || others.length > 0)
    throw new Error(`${name}: a range in a single value is not modelled here`);
  return wire(cell, dataTypes);
};

const isRange = (argument: Exclude<Argument, undefined>): argument is readonly (readonly Cell[])[] =>
  Array.isArray(argument);

const wire = (cell: Cell, dataTypes: boolean): unknown => {
  if (typeof cell !== "object" || cell === null) return cell;
  const object = "error" in cell ? { type: "CustomFunctionError", code: cell.error } : cell;
  // With data types an object crosses as JSON within JSON.
  return dataTypes ? { value: JSON.stringify(object) } : object;
};
