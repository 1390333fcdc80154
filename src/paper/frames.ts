import type { Frame } from "./blocks";
import { line, PAPERS, shifted, type Page, type Paper } from "./page";
import { lineHeight, TYPE } from "./textBlocks";

/** Printers leave a rim of the paper white; common practice, no source. */
const MARGIN = 12;
const HALF_MARGIN = 9;

/** A whole page of a paper. */
export function pageFrame(paper: Paper): Frame {
  return { ...PAPERS[paper], margin: MARGIN, head: 0, foot: lineHeight(TYPE.small) + 1 };
}

/** Half a page of a paper that lies on its side. */
export function halfFrame(paper: Paper): Frame {
  const { width, height } = PAPERS[paper];
  return { width: height / 2, height: width, margin: HALF_MARGIN, head: 0, foot: lineHeight(TYPE.small) + 1 };
}

/** Half pages two by two, with a line to cut along between them. */
export function twoUp(halves: readonly Page[]): readonly Page[] {
  return Array.from({ length: Math.ceil(halves.length / 2) }, (_, index): Page => {
    const [left, right] = [halves[2 * index]!, halves[2 * index + 1]];
    const { width, height } = left;
    return {
      width: 2 * width,
      height,
      placed: [
        ...left.placed,
        ...(right === undefined ? [] : shifted(right.placed, width, 0)),
        line([width, 0], [width, height], { dashed: true }),
      ],
      bookmark: [left.bookmark, right?.bookmark ?? ""].filter((name) => name !== "").join(", "),
    };
  });
}
