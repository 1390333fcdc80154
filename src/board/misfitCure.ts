import { isBoardOrCard, type Material } from "../settings/stock";

/** A piece that no sheet of its stock holds as it must lie. */
export interface Misfit {
  readonly material: Material;
  /** Its stock comes in sheets; a roll is never joined along its width. */
  readonly inSheets: boolean;
  /** It would lie on a sheet with the grain the other way. */
  readonly againstGrain: boolean;
}

/** What a user can do about it. */
export function misfitCure({ material, inSheets, againstGrain }: Misfit): string {
  // Coverings are lapped where their blanks are sized.
  const join = inSheets && isBoardOrCard({ material }) ? "join it: join=yes; or " : "";
  return againstGrain
    ? `turn it: grain free in the stock table; ${join}add another sheet size`
    : `${join}add a larger size to the stock table`;
}
