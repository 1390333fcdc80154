import type { Mm } from "../measure/units";
import { withTag, type Page } from "./page";
import { lineHeight, textLine, TYPE } from "./textBlocks";
import type { Typesetter } from "./typesetter";

/** From the lower right corner of the paper. */
const FROM_RIGHT: Mm = 10;
const FROM_FOOT: Mm = 5;

/** A page with its number in the file below its foot, so that the index can name it. */
export function withNumber(page: Page, number: number, type: Typesetter): Page {
  if (page.placed.length === 0) return page;
  const text = String(number);
  const width = type.width(text, TYPE.body, true) + 1;
  const box = { x: page.width - FROM_RIGHT - width, y: page.height - FROM_FOOT - lineHeight(TYPE.body), width };
  const printed = textLine(text, box, { size: TYPE.body, bold: true, align: "end" });
  return { ...page, placed: [...page.placed, ...withTag([printed], { role: "Artifact", of: page })] };
}
