import { nearestMark } from "../measure/benchLength";
import type { Mm, WorkbookUnit } from "../measure/units";
import { gap, type Block } from "./blocks";
import { line, OUTLINE, rectangle, type Placed } from "./page";
import { stretchOf, type SteppedEdge } from "./steppedEdges";
import { paragraph, TYPE } from "./textBlocks";
import type { Typesetter } from "./typesetter";

const CUT_WEIGHT: Mm = 0.5;
const SPACE_BETWEEN: Mm = 3.5;

/** An edge that is cut in steps in true size, as many stretches of it as the width of the paper needs. */
export function edgeBlocks(edge: SteppedEdge, unit: WorkbookUnit, width: Mm, type: Typesetter): readonly Block[] {
  const shown = (size: Mm) => nearestMark(size, unit);
  const count = Math.ceil(edge.long / width);
  const wide = edge.long / count;
  const words = [
    ...paragraph(
      `Edge cut in steps, ${count} ${count === 1 ? "stretch" : "stretches"}`,
      width,
      { size: TYPE.heading, bold: true, withNext: true, role: "H2" },
      type,
    ),
    ...paragraph(
      `For ${edge.serves}. Tape the stretches together at their dashed ends; turn them over for the other edge.`,
      width,
      { size: TYPE.body, withNext: true },
      type,
    ),
  ];
  return [
    ...words,
    ...Array.from({ length: count }, (_, index) => {
      const [from, to] = [index * wide, (index + 1) * wide];
      return [
        ...paragraph(
          `${index + 1}: ${shown(from)} to ${shown(to)} ${unit} from ${edge.fromEnd}`,
          width,
          { size: TYPE.body, bold: true, withNext: true },
          type,
        ),
        stretchBlock(edge, from, to),
        gap(SPACE_BETWEEN),
      ];
    }).flat(),
  ];
}

/** The edge at the top, what is cut away hatched. */
function stretchBlock(edge: SteppedEdge, from: Mm, to: Mm): Block {
  const { steps, lines } = stretchOf(edge, from, to);
  const [wide, high] = [to - from, edge.high];
  const ends = [
    { at: 0, isEnd: from === 0 },
    { at: wide, isEnd: to > edge.long - NOISE_MM },
  ];
  return {
    height: high,
    withNext: false,
    at: (x, y): readonly Placed[] => [
      ...steps.flatMap((step): readonly Placed[] => {
        const box = { x: x + step.from, y, width: step.to - step.from, height: step.deep };
        return [
          { kind: "outline", points: rectangle(box).points, weight: 0, shade: 0, hatched: true },
          rectangle(box, { weight: OUTLINE }),
        ];
      }),
      line([x, y], [x + wide, y], { weight: OUTLINE }),
      ...ends.map(({ at, isEnd }) =>
        line([x + at, y], [x + at, y + high], isEnd ? { weight: OUTLINE } : { dashed: true }),
      ),
      ...lines.map(({ kind, from: [x0, y0], to: [x1, y1] }) =>
        line([x + x0, y + y0], [x + x1, y + y1], {
          dashed: kind === "fold",
          weight: kind === "cut" ? CUT_WEIGHT : undefined,
        }),
      ),
    ],
  };
}

const NOISE_MM: Mm = 1e-6;
