import { frontPages } from "./frontPages";
import { onLeaves, pageFrame } from "./frames";
import type { Estimate } from "../estimate/estimate";
import type { SizedSurvey } from "../survey/sizeSurvey";
import type { Page, Paper } from "./page";
import { indexEntries } from "./indexEntries";
import { withNumber } from "./pageNumber";
import type { Typesetter } from "./typesetter";
import { type PaperKind, ON_LABEL_SHEETS } from "./paperKinds";

/** The parts with the pages in front of them, where there is work for the bench; and the number of each page. */
export function withFront(
  parts: readonly Part<PaperKind>[],
  { survey, estimate }: { readonly survey: SizedSurvey; readonly estimate: Estimate | undefined },
  { paper, printed }: { readonly paper: Paper; readonly printed: string },
  type: Typesetter,
): readonly Part<PaperKind | "front">[] {
  const numbered = parts.filter(({ what }) => !ON_LABEL_SHEETS.includes(what));
  const labels = parts.filter(({ what }) => ON_LABEL_SHEETS.includes(what));
  const frame = pageFrame(paper, printed);
  const front = (pagesBefore: number) => {
    const index = indexEntries(
      survey,
      numbered.flatMap(({ pages }) => pages),
      pagesBefore,
    );
    // What follows begins on the front of a leaf.
    return onLeaves([frontPages(survey, frame, type, { estimate, index }), []]);
  };
  const atBench = numbered.some(({ what, pages }) => FOR_THE_BENCH.includes(what) && pages.length > 0);
  // How many pages there are in front does not depend on the numbers on them.
  const before = atBench ? front(0).length : 0;
  const all = [...(atBench ? [{ what: "front" as const, pages: front(before) }] : []), ...numbered];
  let number = 0;
  return [
    ...all.map(({ what, pages }) => ({ what, pages: pages.map((page) => withNumber(page, ++number, type)) })),
    ...labels,
  ];
}

/** Pages of one kind. */
interface Part<What> {
  readonly what: What;
  readonly pages: readonly Page[];
}

const FOR_THE_BENCH: readonly PaperKind[] = ["tickets", "plans"];
