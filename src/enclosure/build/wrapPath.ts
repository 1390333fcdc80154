import type { Mm } from "../../measure/units";
import { wholeDown } from "../part";

/**
 * The path of a strip around a span: up, over by the shorter flap first, the longer flap one layer higher. It is a whole
 * number of millimetres long; what is lost to that is lost at the end of the longer flap.
 */
export function wrapPath(wrap: {
  readonly span: Mm;
  readonly foot: Mm;
  readonly over: Mm;
  readonly layer: Mm;
  readonly k: Mm;
  readonly longer: number;
  readonly shorter: number;
  readonly relief: Mm;
}): readonly (readonly [Mm, Mm])[] {
  const { span, foot, over, layer, k, longer, shorter, relief } = wrap;
  const [near, far] = [-k / 2, span + k / 2];
  const panel = span - relief;
  const length = (shorter + longer) * panel + 2 * (over - foot) + layer + (far - near);
  const loss = length - wholeDown(length);
  return [
    [near + shorter * panel, over],
    [near, over],
    [near, foot],
    [far, foot],
    [far, over + layer],
    [far - longer * panel + loss, over + layer],
  ];
}
