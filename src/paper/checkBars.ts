import { MM_PER, type Mm } from "../measure/units";
import type { Frame } from "./blocks";
import { rectangle, type Placed } from "./page";
import { textLine, TYPE } from "./textBlocks";
import type { Typesetter } from "./typesetter";

/** Lengths of the bars by which a print is checked. */
const CHECK_SIDE: Mm = 100;
const INCH_BAR_IN = 4;
const BAR_HIGH: Mm = 3;
export const CHECK_ROOM: Mm = 2 * BAR_HIGH + 10;

/** Bars of exactly 100 mm in ten parts and 4 in in eight, at the head of a page. */
export function checkBars({ margin }: Frame, type: Typesetter): readonly Placed[] {
  const [x, y] = [margin, margin];
  const text = "100 mm, and 4 in. If a rule says otherwise, print again at 100 %, not “fit to page”.";
  const bar = (top: Mm, long: Mm, parts: number): readonly Placed[] => [
    ...Array.from({ length: parts / 2 }, (_, index) =>
      rectangle(
        { x: x + (2 * index * long) / parts, y: top, width: long / parts, height: BAR_HIGH },
        { weight: 0, shade: 1 },
      ),
    ),
    rectangle({ x, y: top, width: long, height: BAR_HIGH }),
  ];
  const below = y + BAR_HIGH + 1;
  return [
    ...bar(y, CHECK_SIDE, 10),
    ...bar(below, INCH_BAR_IN * MM_PER.in, 2 * INCH_BAR_IN),
    textLine(text, { x, y: below + BAR_HIGH + 1, width: type.width(text, TYPE.small) }, { size: TYPE.small }),
  ];
}
