/** A parameter of a cell function in functions.json. */
export interface ParameterMetadata {
  readonly name: string;
  readonly description?: string;
  readonly dimensionality?: "scalar" | "matrix";
  readonly optional?: boolean;
  readonly repeating?: boolean;
}

/** A cell function in functions.json. */
export interface FunctionMetadata {
  readonly id: string;
  readonly name: string;
  readonly description?: string;
  readonly parameters: readonly ParameterMetadata[];
}

/** What stands before every name: the add-in's namespace. */
export const NAMESPACE = "ENC";
