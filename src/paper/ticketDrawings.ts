import { assembledView } from "../drawing/assembledView";
import { EXPLODED_MARGIN, explodedView } from "../drawing/explodedView";
import type { Mm } from "../measure/units";
import { beside, type Block } from "./blocks";
import { drawingBlock } from "./drawingBlock";
import type { Ticket } from "./ticket";
import { WIDE } from "./ticketBoards";

/** Units of a drawing in a millimetre of paper: its numbers, 11 units high, come out at 9 points. */
const UNITS_PER_MM = 3.4;
const LEAST_SHARE = 0.05;
/** Share of the width that the enclosure put together takes, beside it drawn apart. */
const CLOSED_SHARE = 0.3;

/** The enclosure drawn apart, its boards numbered as in the tables; on a whole page also put together. */
export function ticketPictures({ sized }: Ticket, width: Mm, highest: Mm): Block {
  const { assembly, settings } = sized;
  const closed = width < WIDE ? 0 : width * CLOSED_SHARE;
  const apart = width - closed;
  const height = Math.round(highest * UNITS_PER_MM);
  const options = {
    unit: settings.answerUnit,
    width: Math.round(apart * UNITS_PER_MM),
    tallest: Math.max(LEAST_SHARE, (height - 2 * EXPLODED_MARGIN) / (apart * UNITS_PER_MM)),
    list: false,
    // A folded piece is drawn flat below, with its folds.
    flats: false,
  };
  // Its numbers are never made smaller: where they need more height, the drawing has it.
  const exploded = { block: drawingBlock(explodedView(assembly, options), apart, Infinity), from: closed };
  if (closed === 0) return exploded.block;
  const whole = assembledView(assembly, { width: Math.round(closed * UNITS_PER_MM), height, closed: true });
  return beside([{ block: drawingBlock(whole, closed, highest), from: 0 }, exploded]);
}
