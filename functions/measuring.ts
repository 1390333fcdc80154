import { dimensionsAnswer, fractionAnswer, measureAnswer } from "../src/item/measuringAnswers";
import { measuringAnswer, plainCell, selector, oneValue } from "./cells";

/**
 * A measure written as number or text, as a number in the workbook's unit.
 * @customfunction MEASURE MEASURE
 * @param measure Number, or text such as 10 3/8 in, 25.4 cm, 1' 2 1/2" or 412 mm
 * @param settings Settings range or text such as unit=cm; as many as you like, later over earlier
 * @returns Length in the workbook's unit
 */
export function measure(measure: any, settings?: any[][][]): any {
  return oneValue(measuringAnswer(measure, settings, (cell, read) => measureAnswer(cell, read)));
}

/**
 * A catalogue's dimension text, such as 31.5 x 24 x 4.2 cm, read into height, width, depth and weight.
 * @customfunction DIMENSIONS DIMENSIONS
 * @param text Dimension text; its order is height x width x depth unless the setting order says otherwise
 * @param which height, width, depth, weight, or all for the three sizes side by side
 * @param settings Settings range or text such as order=LWD; text unit=cm; as many as you like, later over earlier
 * @returns Length in the workbook's unit; weight in kg, or lb when the unit is in
 */
export function dimensions(text: any, which: any[][], settings?: any[][][]): any[][] {
  return measuringAnswer(text, settings, (cell, read) => dimensionsAnswer(cell, selector(which, "which", "all"), read));
}

/**
 * A length as it is read off a rule in inches, such as 10 3/8.
 * @customfunction FRACTION FRACTION
 * @param length Length: a number in the unit of answers, or text with its unit
 * @param denominator Finest mark of the rule: 2 to 64, such as 16 for sixteenths
 * @param settings Settings range or text such as unit=in; as many as you like, later over earlier
 * @returns Text
 */
export function fraction(length: any, denominator: any, settings?: any[][][]): any {
  return oneValue(
    measuringAnswer(length, settings, (cell, read) => fractionAnswer(cell, plainCell(denominator), read)),
  );
}
