import type { Mm } from "../measure/units";
import type { Settings } from "../settings/schema";
import { cutTree, type CutTree } from "./cutTree";
import type { SheetGroup } from "./sheetGroups";

/** What comes off the sheets of a group, by name, and what is trimmed off their edges first. */
export function groupTree(
  { from, sheets: [sheet] }: SheetGroup,
  { edgeTrim: usual, pieceGap }: Settings,
): { readonly tree: CutTree; readonly edgeTrim: Mm } {
  // An off-cut has clean edges.
  const edgeTrim = sheet.offCut === undefined ? usual : 0;
  const start = from === undefined || from === 0 ? edgeTrim : 0;
  return { tree: cutTree(sheet, { edgeTrim, pieceGap, start }), edgeTrim };
}
