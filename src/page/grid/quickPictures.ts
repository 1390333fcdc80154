import { markOnce } from "./markOnce";
import { readCellsOnce } from "./readCellsOnce";
import { restWhenPainted } from "./restWhenPainted";
import { stillDashes } from "./stillDashes";

/** Keeps the grid from drawing what is drawn already; before it is made. */
export function quickPictures(): void {
  restWhenPainted();
  markOnce();
  readCellsOnce();
  stillDashes();
}
