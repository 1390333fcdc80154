/** A call of one of our functions under the name by which a workbook stores it. */
export function stored(fn: string, args: readonly string[]): string {
  return `_xldudf_ENC_${fn.replaceAll(".", "_")}(${args.join(",")})`;
}

/** A text in a formula. */
export function quoted(text: string): string {
  return `"${text.replaceAll('"', '""')}"`;
}
