import { benchInstruction } from "../enclosure/benchInstruction";
import { partList } from "../covering/partList";
import type { Part } from "../enclosure/part";
import { formatLength } from "../measure/formatLength";
import type { Mm } from "../measure/units";
import type { Block } from "./blocks";
import { GRAIN_ICON_HEIGHT, grainIcon } from "./grainIcon";
import { fitColumns, table, type TableCell } from "./table";
import { heading, lineHeight, TYPE, tickBox, writeIn } from "./textBlocks";
import type { Ticket } from "./ticket";
import type { Typesetter } from "./typesetter";

const ICON_COLUMN: Mm = 13;
const TICK_COLUMN: Mm = 5.5;

/** Every part in the order in which it is cut, each with a box to tick. */
export function ticketParts({ sized, quantity }: Ticket, width: Mm, type: Typesetter): readonly Block[] {
  const { assembly, settings } = sized;
  const parts = partList(assembly, settings);
  const shown = (size: Mm) => formatLength(size, settings.unit);
  const size = TYPE.small;
  const columns = [
    { heading: "", least: TICK_COLUMN },
    { heading: "#", align: "end" as const },
    { heading: "part", bold: true, share: 1.1 },
    { heading: "cut", align: "end" as const },
    { heading: `length × width, ${settings.unit}`, share: 1 },
    { heading: "grain", least: ICON_COLUMN },
    { heading: "of", share: 1 },
    { heading: "how: match, do not measure, where it says so", share: 2.1 },
  ];
  const rows = parts.map((part, index): readonly TableCell[] => [
    { height: lineHeight(size), draw: (x, y) => [tickBox(x, y, size)] },
    String(index + 1),
    part.fullName,
    String(part.count * quantity),
    `${shown(part.length)} × ${shown(part.width)}`,
    { height: GRAIN_ICON_HEIGHT, draw: (x, y) => grainIcon(part, x, y) },
    part.caliper > 0 && !part.stock.includes(String(part.caliper))
      ? `${part.stock}, ${shown(part.caliper)} thick`
      : part.stock,
    instruction(part, sized),
  ]);
  return [
    ...heading("Parts, in cutting order", width, type),
    ...table(fitColumns(columns, rows, width, size, type), rows, { size }, type),
  ];
}

function instruction(part: Part, { assembly, settings }: Ticket["sized"]): string {
  const either = part.grain === "either" ? "grain either way" : "";
  return [either, benchInstruction(part, assembly, settings.unit)].filter((text) => text !== "").join("; ");
}

/** A line for each board and card, to write down what its caliper measures: sizes hang on it. */
export function caliperLines({ sized }: Ticket, width: Mm, type: Typesetter): readonly Block[] {
  const boards = new Map<string, Mm>();
  for (const { board } of sized.assembly.parts) boards.set(board.stock, board.caliper);
  const { unit } = sized.settings;
  const size = TYPE.body;
  const height = lineHeight(size) * WRITING_ROOM;
  return [
    ...heading("Measure the board first: sizes hang on its caliper", width, type),
    ...[...boards].map(([stock, caliper]): Block => ({
      height,
      withNext: false,
      at: (x, y) => [
        tickBox(x, y + height - lineHeight(size), size),
        ...writeIn(
          `${shortStock(stock)}, sized for ${formatLength(caliper, unit)} ${unit}; measured:`,
          { x: x + TICK_COLUMN, y: y + height - lineHeight(size), width: Math.min(width - TICK_COLUMN, LONGEST_LINE) },
          size,
          type,
        ),
      ],
    })),
  ];

  function shortStock(stock: string): string {
    return stock.length > LONGEST_STOCK ? `${stock.slice(0, LONGEST_STOCK)}…` : stock;
  }
}

const WRITING_ROOM = 1.35;
const LONGEST_LINE: Mm = 130;
const LONGEST_STOCK = 40;
