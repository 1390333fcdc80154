import type { Frame } from "./blocks";
import { line, PAPERS, shifted, type Page, type Paper } from "./page";
import { lineHeight, TYPE } from "./textBlocks";

/** Printers leave a rim of the paper white; common practice, no source. */
const MARGIN = 10;
const HALF_MARGIN = 9;

/** A whole page of a paper. */
export function pageFrame(paper: Paper, printed = ""): Frame {
  return { ...PAPERS[paper], margin: MARGIN, head: 0, foot: lineHeight(TYPE.small) + 1, printed };
}

/** Half a page of a paper that lies on its side. */
export function halfFrame(paper: Paper, printed = ""): Frame {
  const { width, height } = PAPERS[paper];
  return { width: height / 2, height: width, margin: HALF_MARGIN, head: 0, foot: lineHeight(TYPE.small) + 1, printed };
}

/** Front and back of one sheet of paper; nothing on the back of a single page. */
export function leavesOf(pages: readonly Page[]): readonly (readonly [front: Page, back: Page | undefined])[] {
  return Array.from({ length: Math.ceil(pages.length / 2) }, (_, index) => [pages[2 * index]!, pages[2 * index + 1]]);
}

/** Pages of which each set begins on the front of a sheet. */
export function onLeaves(sets: readonly (readonly Page[])[]): readonly Page[] {
  return sets.flatMap((pages, index) => {
    const last = index === sets.length - 1;
    const blank = pages.length % 2 === 1 && !last ? [{ ...pages[0]!, placed: [], bookmark: "", names: [] }] : [];
    return [...pages, ...blank];
  });
}

/**
 * Leaves of half a page two by two, with a line to cut along between them: the fronts, then the backs behind them, as
 * they lie when the sheet is turned on its short edge.
 */
export function twoUp(sets: readonly (readonly Page[])[]): readonly Page[] {
  const leaves = sets.flatMap(leavesOf);
  return Array.from({ length: Math.ceil(leaves.length / 2) }, (_, index) => {
    const [[front, back], [otherFront, otherBack] = [undefined, undefined]] = leaves.slice(2 * index) as [
      (typeof leaves)[number],
      (typeof leaves)[number]?,
    ];
    return [sideBySide(front, front, otherFront), sideBySide(front, otherBack, back)];
  }).flat();
}

function sideBySide({ width, height }: Page, left: Page | undefined, right: Page | undefined): Page {
  return {
    width: 2 * width,
    height,
    placed: [
      ...(left?.placed ?? []),
      ...(right === undefined ? [] : shifted(right.placed, width, 0)),
      line([width, 0], [width, height], { dashed: true }),
    ],
    bookmark: [left?.bookmark ?? "", right?.bookmark ?? ""].filter((name) => name !== "").join(", "),
    ...(left?.section === undefined ? {} : { section: left.section }),
    names: [...(left?.names ?? []), ...(right?.names ?? [])],
  };
}
