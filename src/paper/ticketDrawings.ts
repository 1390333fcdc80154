import { stockFor } from "../covering/cutBlanks";
import { blankTemplate } from "../drawing/blankTemplate";
import { explodedView } from "../drawing/explodedView";
import { templateOfBlank } from "../drawing/templateOfBlank";
import type { Blank } from "../enclosure/blank";
import type { Mm } from "../measure/units";
import { beside, gap, type Block } from "./blocks";
import { drawingBlock } from "./drawingBlock";
import { heading } from "./textBlocks";
import type { Ticket } from "./ticket";
import type { Typesetter } from "./typesetter";

/** Units of a drawing in a millimetre of paper: its letters, 12 units high, come out at 8 points. */
const UNITS_PER_MM = 4.2;
/** On a narrow page the boards bear the numbers of the parts below. */
const WIDE: Mm = 150;
const TALLEST = { wide: 0.3, narrow: 0.42 } as const;
const HIGHEST_SHARE = 0.6;
const BLANK_HIGH = 68;
const BLANK_GAP: Mm = 3;
const LEAST_BLANK: Mm = 85;

/** The enclosure drawn apart. */
export function ticketExploded({ sized }: Ticket, width: Mm): Block {
  const options = {
    unit: sized.settings.unit,
    width: Math.round(width * UNITS_PER_MM),
    tallest: width < WIDE ? TALLEST.narrow : TALLEST.wide,
    list: false,
  };
  return drawingBlock(explodedView(sized.assembly, options), width, width * HIGHEST_SHARE);
}

/** Covering and lining blanks that are turned in or have corners cut, as many side by side as there is room for. */
export function ticketBlanks({ sized }: Ticket, width: Mm, type: Typesetter): readonly Block[] {
  const { assembly, settings } = sized;
  const blanks = assembly.kind.blanks(assembly, settings).filter((blank) => hasLines(blank) && isCut(blank));
  if (blanks.length === 0) return [];
  const across = Math.floor((width + BLANK_GAP) / (LEAST_BLANK + BLANK_GAP));
  const room = (width - (across - 1) * BLANK_GAP) / across;
  const drawn = blanks.map((blank) => {
    const options = {
      unit: settings.unit,
      width: Math.round(room * UNITS_PER_MM),
      height: BLANK_HIGH,
    };
    // What is said of the blank stands in the list of parts.
    return drawingBlock(blankTemplate({ ...templateOfBlank(blank), note: "" }, options), room, room);
  });
  const rows = Array.from({ length: Math.ceil(drawn.length / across) }, (_, row) =>
    beside(
      drawn.slice(row * across, (row + 1) * across).map((block, column) => ({
        block,
        from: column * (room + BLANK_GAP),
      })),
    ),
  );
  return [...heading("Covering: turn-ins and corners", width, type), ...rows.flatMap((row) => [row, gap(1)])];

  function isCut({ along, across: high, material }: Blank): boolean {
    return along > 0 && high > 0 && stockFor(material, settings) !== "none";
  }
}

function hasLines({ runAlong, runAcross, cutAway }: Blank): boolean {
  return cutAway !== undefined || (runAlong?.length ?? 0) > 1 || (runAcross?.length ?? 0) > 1;
}
