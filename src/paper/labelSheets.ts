import { formatLength } from "../measure/formatLength";
import type { Mm } from "../measure/units";
import { codeModules } from "./codeModules";
import { PAPERS, rectangle, type Page, type Paper, type Placed } from "./page";
import { lineHeight, textLine } from "./textBlocks";
import { partList } from "../covering/partList";
import type { Ticket } from "./ticket";
import type { Typesetter } from "./typesetter";
import { shortened, wrapText } from "./wrapText";

export interface LabelOptions {
  readonly paper: Paper;
  readonly columns: number;
  readonly rows: number;
  /** Round the labels of a sheet; most label sheets have one above and below. */
  readonly margin: Mm;
  /** Item by item, or stock by stock as the boards are cut. */
  readonly order: "item" | "stock";
}

export const USUAL_LABELS = { columns: 3, rows: 8, margin: 0, order: "item" } as const;

/** A label of one piece. */
export interface Label {
  readonly identifier: string;
  readonly part: string;
  readonly size: string;
  readonly stock: string;
  /** `2 of 4`; empty for a single piece. */
  readonly copy: string;
}

/** Printers do not print to the rim of the paper, and labels are never fed quite straight. */
const INSET: Mm = 3.5;
const SIZES = { identifier: 12, part: 9, small: 8 } as const;
const CODE_LEAST: Mm = 13;
const CODE_MOST: Mm = 22;
const CODE_GAP: Mm = 2;
const RIM_WEIGHT: Mm = 0.08;
const RIM_ROUNDNESS: Mm = 1;

/** One label for every piece that is cut. */
export function labelsOf(tickets: readonly Ticket[], order: LabelOptions["order"]): readonly Label[] {
  const labels = tickets.flatMap(({ identifier, quantity, sized }) => {
    const { unit } = sized.settings;
    return partList(sized.assembly, sized.settings).flatMap((part) => {
      const count = part.count * quantity;
      return Array.from({ length: count }, (_, copy): Label => ({
        identifier,
        part: part.fullName,
        size: `${formatLength(part.length, unit)} × ${formatLength(part.width, unit)} ${unit}`,
        stock: part.stock,
        copy: count === 1 ? "" : `${copy + 1} of ${count}`,
      }));
    });
  });
  if (order === "item") return labels;
  const stocks = [...new Set(labels.map(({ stock }) => stock))];
  return stocks.flatMap((stock) => labels.filter((label) => label.stock === stock));
}

/** Labels on sheets, row by row. */
export function labelSheets(labels: readonly Label[], options: LabelOptions, type: Typesetter): readonly Page[] {
  const { width, height } = PAPERS[options.paper];
  const { columns, rows, margin } = options;
  const [across, down] = [(width - 2 * margin) / columns, (height - 2 * margin) / rows];
  const each = columns * rows;
  return Array.from({ length: Math.ceil(labels.length / each) }, (_, page): Page => {
    const own = labels.slice(page * each, (page + 1) * each);
    return {
      width,
      height,
      bookmark: `Labels ${page + 1}`,
      placed: own.flatMap((label, index) => {
        const [column, row] = [index % columns, Math.floor(index / columns)];
        return labelAt(
          label,
          { x: margin + column * across, y: margin + row * down, width: across, height: down },
          type,
        );
      }),
    };
  });
}

/** Labels smaller than this hold no words that can be read. */
export const LEAST_LABEL = { width: 45, height: 20 } as const;

function labelAt(
  label: Label,
  box: { readonly x: Mm; readonly y: Mm; readonly width: Mm; readonly height: Mm },
  type: Typesetter,
): readonly Placed[] {
  const inner = {
    x: box.x + INSET,
    y: box.y + INSET,
    width: box.width - 2 * INSET,
    height: box.height - 2 * INSET,
  };
  const side = Math.min(CODE_MOST, inner.height, inner.width / 2);
  const coded = side >= CODE_LEAST && codeModules(label.identifier) !== undefined;
  const room = inner.width - (coded ? side + CODE_GAP : 0);
  const below = [
    { text: [label.part, label.copy].filter((text) => text !== "").join(", "), size: SIZES.part, bold: false },
    { text: label.size, size: SIZES.small, bold: false },
    { text: label.stock, size: SIZES.small, bold: false },
  ];
  const taken = below.reduce((sum, { size }) => sum + lineHeight(size), 0);
  const most = Math.max(1, Math.floor((inner.height - taken) / lineHeight(SIZES.identifier)));
  const style = { size: SIZES.identifier, bold: true };
  const whole = wrapText(label.identifier, room, style, type);
  // What the label has no room for stands in the code.
  const lines =
    whole.length <= most
      ? whole
      : [...whole.slice(0, most - 1), shortened(whole.slice(most - 1).join(" "), room, style, type)];
  let y = inner.y;
  const write = (text: string, size: number, bold: boolean) => {
    const placed = textLine(
      shortened(text, room, { size, bold }, type),
      { x: inner.x, y, width: room },
      { size, bold },
    );
    y += lineHeight(size);
    return placed;
  };
  return [
    rectangle(
      {
        x: box.x + RIM_ROUNDNESS,
        y: box.y + RIM_ROUNDNESS,
        width: box.width - 2 * RIM_ROUNDNESS,
        height: box.height - 2 * RIM_ROUNDNESS,
      },
      { weight: RIM_WEIGHT },
    ),
    ...lines.map((text) => write(text, SIZES.identifier, true)),
    ...below.map(({ text, size, bold }) => write(text, size, bold)),
    ...(coded
      ? [
          {
            kind: "code" as const,
            box: { x: inner.x + inner.width - side, y: inner.y, width: side, height: side },
            text: label.identifier,
          },
        ]
      : []),
  ];
}
