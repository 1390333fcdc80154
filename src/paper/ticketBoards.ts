import { partList } from "../covering/partList";
import type { Part } from "../enclosure/part";
import { benchLength } from "../measure/benchLength";
import { formatLength } from "../measure/formatLength";
import { fromMm, type Mm, type WorkbookUnit } from "../measure/units";
import { beside, type Block } from "./blocks";
import { GRAIN_ICON_HEIGHT, grainIcon } from "./grainIcon";
import { fitColumns, table, type TableCell } from "./table";
import { BASELINE_SHARE, heading, lineHeight, paragraph, textLine, tickBox, TYPE, writeIn } from "./textBlocks";
import type { Ticket } from "./ticket";
import { matchCell, matchLines } from "./ticketMatch";
import type { Typesetter } from "./typesetter";

const ICON_COLUMN: Mm = 13;
const TICK_COLUMN: Mm = 6.5;
/** A page narrower than this is half a page. */
export const WIDE: Mm = 150;

/** A part of the list with its number, by which the drawing and the order of work name it. */
export interface NumberedPart {
  readonly number: number;
  readonly part: Part;
}

export function numberedParts({ sized }: Pick<Ticket, "sized">): readonly NumberedPart[] {
  return partList(sized.assembly, sized.settings).map((part, index) => ({ number: index + 1, part }));
}

export interface PartTableOptions {
  /** Over the last column; no heading row where it is undefined. */
  readonly how: string | undefined;
  /** What is cut from, said over the table: a part of another stock says so. A column has it where it is undefined. */
  readonly stock?: string;
  /** Whether figures are a little smaller, for a page that is full. */
  readonly tight: boolean;
}

/** Parts of one round: number, name, how many, size in big figures, grain, stock, and how it is matched. */
export function partTable(
  parts: readonly NumberedPart[],
  { sized, quantity }: Ticket,
  { how, stock, tight }: PartTableOptions,
  width: Mm,
  type: Typesetter,
): readonly Block[] {
  const { answerUnit: unit } = sized.settings;
  const size = TYPE.body;
  const wide = width >= WIDE;
  const figure = wide && !tight ? TYPE.figure : TYPE.figureNarrow;
  // Small letters stand on the line of the big figures.
  const drop = (lineHeight(figure) - lineHeight(size)) * BASELINE_SHARE;
  const stockColumn = stock === undefined;
  // The tables of all rounds have columns alike.
  const alike = numberedParts({ sized }).filter(({ part }) => (part.placed === undefined) === stockColumn);
  const names = alike.map(({ part }) => type.width(part.fullName, size, true) + CELL_RIM);
  const named = Math.max(...names) <= WIDEST_NAME;
  // A long name of a stock is wrapped between its words.
  const wordWide = widest(parts.flatMap(({ part }) => stockText(part).split(" ")));
  const stockWides = [...new Set(parts.map(({ part }) => stockText(part)))].map((stock) => widest([stock]));
  const widths = stockWides.map((each) => Math.min(WIDEST_STOCK, Math.max(wordWide, Math.min(LONG_STOCK, each))));
  const most = Math.max(...widths);
  return lowest(
    [...new Set(stockColumn && wide ? [...widths, wordWide] : [most])].sort((one, other) => other - one).map(rowsWith),
  );

  function widest(texts: readonly string[]): Mm {
    return Math.max(...texts.map((text) => type.width(text, size) + CELL_RIM));
  }

  function rowsWith(stockWidth: Mm): readonly Block[] {
    const columns = [
      { heading: "", least: TICK_COLUMN },
      { heading: "", align: "end" as const, bold: true, least: NUMBER_COLUMN },
      {
        heading: "part",
        bold: true,
        ...(wide && named ? { least: Math.max(...names) + NAME_SLACK } : { share: 1 }),
      },
      { heading: "cut", align: "end" as const, size: TYPE.heading },
      { heading: "length × width", bold: true, size: figure },
      { heading: "grain", least: ICON_COLUMN },
      ...(stockColumn ? [{ heading: "of", wraps: true, least: stockWidth + NAME_SLACK }] : []),
      ...(wide ? [{ heading: how ?? "", share: 2 }] : []),
    ];
    const plain = parts.map(({ number, part }): readonly TableCell[] => [
      { height: lineHeight(figure), draw: (x, y) => [tickBox(x, y, figure)] },
      String(number),
      part.fullName,
      String(part.count * quantity),
      `${benchLength(part.length, unit)} × ${benchLength(part.width, unit)}`,
      { height: GRAIN_ICON_HEIGHT + drop, draw: (x, y) => grainIcon(part, x, y + drop), alt: `grain ${part.grain}` },
      ...(stockColumn ? [stockText(part)] : []),
    ]);
    const headed = how !== undefined;
    const fitted = fitColumns(columns, plain, width, size, type);
    const lines = parts.map(({ part }) => {
      const own = matchLines(part, sized);
      if (stockColumn || stockText(part) === stock) return own;
      const [first, ...others] = own;
      const from = `of ${stockText(part)}`;
      // With a sum the stock stands by itself, so that the line to write on has room.
      return first === undefined || first.blank
        ? [{ text: from, blank: false }, ...own]
        : [{ ...first, text: `${from}; ${first.text}` }, ...others];
    });
    if (!wide) {
      // On half a page the order of assembly alone says where a covering goes; how thick a cushion is, it does not say.
      const said = lines.map((each, index) => (stockColumn && parts[index]!.part.material !== "cushion" ? [] : each));
      const under = said.map((each) => matchCell(each, width - CELL_RIM, { size, drop: 0 }, type));
      return table(fitted, plain, { size, headed, tight, under }, type);
    }
    const room = fitted.at(-1)!.width - CELL_RIM;
    const rows = plain.map((row, index) => [...row, matchCell(lines[index]!, room, { size, drop }, type)]);
    return table(fitted, rows, { size, headed, tight }, type);
  }
}

function lowest(tables: readonly (readonly Block[])[]): readonly Block[] {
  const heightOf = (blocks: readonly Block[]) => blocks.reduce((sum, { height }) => sum + height, 0);
  return tables.reduce((best, each) => (heightOf(each) < heightOf(best) ? each : best));
}

/** What most of the parts are cut from: `conservation board 2, 2 plies`. */
export function mostlyOf(parts: readonly NumberedPart[]): string {
  const stocks = parts.map(({ part }) => stockText(part));
  const times = (stock: string) => stocks.filter((each) => each === stock).length;
  return stocks.reduce((most, stock) => (times(stock) > times(most) ? stock : most));
}

function stockText({ stock, plies }: Part): string {
  // The name of the part says the material.
  const named = stock.replace(/^[a-z]+, (?=not in stock$)/, "");
  return plies === 1 ? named : `${named}, ${plies} plies`;
}

const NUMBER_COLUMN: Mm = 6;
const CELL_RIM: Mm = 1.8;
const NAME_SLACK: Mm = 0.2;
const WIDEST_STOCK: Mm = 40;
const LONG_STOCK: Mm = 33;
const WIDEST_NAME: Mm = 48;

/** What the calipers of boards and cards measure, to be written down: sums need them. Of joint strips they do not. */
export function caliperLines({ sized }: Ticket, width: Mm, type: Typesetter): readonly Block[] {
  const boards = new Map<string, Mm>();
  for (const { board, role } of sized.assembly.parts) if (role !== "strip") boards.set(board.stock, board.caliper);
  const { answerUnit: unit } = sized.settings;
  const size = TYPE.body;
  const height = lineHeight(size) * WRITING_ROOM;
  const across = width >= WIDE ? 2 : 1;
  const room = (width - (across - 1) * COLUMN_GAP) / across;
  const entries = [...boards].map(([stock, caliper]): Block => ({
    height,
    withNext: true,
    at: (x, y) =>
      writeIn(
        `Measure ${shortStock(stock)}, sized for ${caliperText(caliper, unit)} ${unit}:`,
        { x, y: y + height - lineHeight(size), width: room },
        size,
        type,
      ),
  }));
  return Array.from({ length: Math.ceil(entries.length / across) }, (_, row) =>
    beside(
      entries
        .slice(row * across, (row + 1) * across)
        .map((block, column) => ({ block, from: column * (room + COLUMN_GAP) })),
    ),
  );
}

/** A caliper gauge of inches reads thousandths, not the marks of a rule. */
function caliperText(caliper: Mm, unit: WorkbookUnit): string {
  return unit === "in" ? fromMm(caliper, unit).toFixed(GAUGE_DECIMALS) : formatLength(caliper, unit);
}

function shortStock(stock: string): string {
  return stock.length > LONGEST_STOCK ? `${stock.slice(0, LONGEST_STOCK)}…` : stock;
}

export const WRITING_ROOM = 1.3;
export const COLUMN_GAP: Mm = 6;
const LONGEST_STOCK = 26;
const GAUGE_DECIMALS = 3;

/** A heading with the caution of its work under it. */
export function titled(text: string, caution: string, width: Mm, type: Typesetter): readonly Block[] {
  return [
    ...heading(text, width, type),
    ...(caution === "" ? [] : paragraph(caution, width, { size: TYPE.body, withNext: true }, type)),
  ];
}

/** What the signs after sizes mean: `45 −`. */
const SIGNS = "+ just over the mark, − just under";

/** Room for a name and a day; where there is room, what signs after sizes mean. */
export function signed(width: Mm, type: Typesetter): Block {
  const said = width < WIDE ? 0 : type.width(SIGNS, TYPE.body) + NAME_SLACK;
  const half = (width - said) / 2;
  const height = lineHeight(TYPE.body) * WRITING_ROOM;
  return {
    height,
    withNext: false,
    at: (x, y) => {
      const foot = y + height - lineHeight(TYPE.body);
      return [
        ...writeIn("Made by", { x, y: foot, width: half - COLUMN_GAP }, TYPE.body, type),
        ...writeIn("Date", { x: x + half, y: foot, width: said === 0 ? half : half - COLUMN_GAP }, TYPE.body, type),
        ...(said === 0 ? [] : [textLine(SIGNS, { x: x + 2 * half, y: foot, width: said }, { size: TYPE.body })]),
      ];
    },
  };
}
