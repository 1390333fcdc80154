import { nearestMark } from "../measure/benchLength";
import type { Mm, WorkbookUnit } from "../measure/units";
import { besideWords } from "./besideWords";
import type { Block } from "./blocks";
import { mitreLeg, MITRE_BOARDS, type Gauge } from "./gauges";
import { line, OUTLINE, rectangle, type Placed } from "./page";
import { paragraph, TYPE } from "./textBlocks";
import type { Typesetter } from "./typesetter";

const GAUGE_LONG: Mm = 60;
/** Shown of the board beside a mitred corner. */
const BOARD_SHOWN: Mm = 12;
const SLIT_WEIGHT: Mm = 0.5;

/** A gauge in true size with what it is for. */
export function gaugeBlocks(
  { turnIn, caliper, serves }: Gauge,
  unit: WorkbookUnit,
  width: Mm,
  type: Typesetter,
): readonly Block[] {
  const shown = (size: Mm) => `${nearestMark(size, unit)} ${unit}`;
  const title =
    caliper === undefined
      ? `Turn-in gauge: ${shown(turnIn)}`
      : `Mitred corner: turn-in ${shown(turnIn)}, board ${shown(caliper)}; ${MITRE_BOARDS} boards are left beyond its corner`;
  const side = turnIn + BOARD_SHOWN;
  const drawing =
    caliper === undefined
      ? { block: barBlock(turnIn), wide: GAUGE_LONG }
      : { block: mitreBlock(turnIn, caliper), wide: side };
  const words = (room: Mm) => [
    ...paragraph(title, room, { size: TYPE.heading, bold: true, withNext: true, role: "H2" }, type),
    ...paragraph(`For ${serves.join(", ")}.`, room, { size: TYPE.body }, type),
  ];
  return besideWords(drawing, words, width);
}

function barBlock(turnIn: Mm): Block {
  return {
    height: turnIn,
    withNext: false,
    at: (x, y) => [rectangle({ x, y, width: GAUGE_LONG, height: turnIn }, { weight: OUTLINE })],
  };
}

/** The corner of the blank at the upper left, hatched what is cut away, dashed the edges of the board. */
function mitreBlock(turnIn: Mm, caliper: Mm): Block {
  const [leg, side] = [mitreLeg(turnIn, caliper), turnIn + BOARD_SHOWN];
  return {
    height: side,
    withNext: false,
    at: (x, y): readonly Placed[] => [
      {
        kind: "outline",
        points: [
          [x, y],
          [x + leg, y],
          [x, y + leg],
        ],
        weight: 0,
        shade: 0,
        hatched: true,
      },
      line([x, y], [x + side, y], { weight: OUTLINE }),
      line([x, y], [x, y + side], { weight: OUTLINE }),
      line([x + leg, y], [x, y + leg], { weight: SLIT_WEIGHT }),
      line([x + turnIn, y + turnIn], [x + side, y + turnIn], { dashed: true }),
      line([x + turnIn, y + turnIn], [x + turnIn, y + side], { dashed: true }),
    ],
  };
}
