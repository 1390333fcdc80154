import { areaName, parseArea } from "../cellRef";
import { areaAfter, type Shift } from "./shift";
import { shiftedFormula } from "./shiftedFormula";

/** `A1:B2 D4` afterwards; empty when all goes. */
export function shiftedAreas(areas: string, shift: Shift): string {
  return areas
    .split(/\s+/)
    .flatMap((each) => {
      const area = parseArea(each);
      // A whole column or row: as a formula of that sheet would name it.
      if (area === undefined) {
        const other = shiftedFormula(each, shift.sheet, shift);
        return other === "#REF!" ? [] : [other];
      }
      const after = areaAfter(area, shift);
      return after === undefined ? [] : [areaName(after)];
    })
    .join(" ");
}
