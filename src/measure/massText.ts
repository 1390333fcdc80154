import { roughFigure } from "./roughFigure";
import { massIn, massUnitOf, type WorkbookUnit } from "./units";

/**
 * A mass as a person says it: `110 g`, `1.25 kg`; in a workbook in inches `3.9 oz`, `1.3 lb`.
 *
 * @param kg kilograms
 * @param unit of the workbook, which has pounds beside inches
 */
export function massText(kg: number, unit: WorkbookUnit): string {
  const large = massUnitOf(unit);
  const small = SMALLER[large];
  const mass = massIn(kg, unit);
  const inSmall = roughSmall(mass * small.count);
  return mass === 0 || inSmall >= small.count ? `${roughFigure(mass)} ${large}` : `${inSmall} ${small.unit}`;
}

/** What less than one of a unit is said in. Grams by definition of the kilogram; ounces, exact: NIST SP 811. */
const SMALLER = { kg: { unit: "g", count: 1000 }, lb: { unit: "oz", count: 16 } } as const;

function roughSmall(mass: number): number {
  return Number(mass.toPrecision(2));
}
