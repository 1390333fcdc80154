/** A cell without anything in it: no value, or a text of nothing but spaces. */
export function isEmpty(cell: unknown): boolean {
  return cell === null || cell === undefined || (typeof cell === "string" && cell.trim() === "");
}

/** A cell that gives nothing. An empty cell can reach a function as 0, so that 0 counts too. */
export function isBlank(cell: unknown): boolean {
  return cell === 0 || isEmpty(cell);
}

/** What a cell says, its spaces in order; empty where it is blank. */
export function cellText(cell: unknown): string {
  return isBlank(cell) ? "" : String(cell).replace(/\s+/g, " ").trim();
}
