import type { Mm } from "../measure/units";
import { lineHeight } from "./textBlocks";
import type { Typesetter } from "./typesetter";
import { shortened, wrapText } from "./wrapText";

/** A text of a label, in one style. */
interface Line {
  readonly text: string;
  readonly size: number;
  readonly bold: boolean;
}

/** Texts in lines, each over as many as leave one for every text that follows; its last line is shortened. */
export function linesWithin(texts: readonly Line[], width: Mm, height: Mm, type: Typesetter): readonly Line[] {
  let left = height;
  return texts.flatMap((style, index) => {
    const after = texts.slice(index + 1).reduce((sum, { size }) => sum + lineHeight(size), 0);
    const most = Math.max(1, Math.floor((left - after) / lineHeight(style.size)));
    const whole = wrapText(style.text, width, style, type);
    // What does not fit on the label is in the code.
    const kept =
      whole.length <= most
        ? whole
        : [...whole.slice(0, most - 1), shortened(whole.slice(most - 1).join(" "), width, style, type)];
    left -= kept.length * lineHeight(style.size);
    return kept.map((text) => ({ ...style, text }));
  });
}

/** With what else has room, whole. */
export function withMore(
  lines: readonly Line[],
  more: readonly Line[],
  width: Mm,
  height: Mm,
  type: Typesetter,
): readonly Line[] {
  return more.reduce((all, style) => {
    const added = wrapText(style.text, width, style, type).map((text) => ({ ...style, text }));
    const taken = [...all, ...added].reduce((sum, { size }) => sum + lineHeight(size), 0);
    return taken > height ? all : [...all, ...added];
  }, lines);
}
