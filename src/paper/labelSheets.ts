import { benchLength } from "../measure/benchLength";
import type { Mm } from "../measure/units";
import { hasCode } from "./codeModules";
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

/** A label of one piece, or of one finished enclosure. */
export interface Label {
  readonly identifier: string;
  /** Part, or title of what is in the enclosure. */
  readonly part: string;
  readonly size: string;
  /** Stock that a piece is cut from, or kind of the enclosure. */
  readonly stock: string;
  /** `2 of 4`; empty for a single piece. */
  readonly copy: string;
}

/** Printers do not print to the rim of the paper, and labels are never fed quite straight. */
const INSET: Mm = 3.5;
/** Of the identifier on a finished box, which is read from a shelf, points. */
export const BOX_IDENTIFIER = 16;
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
    // A strip over a joint is too small for a label.
    const parts = partList(sized.assembly, sized.settings).filter(({ placed }) => placed?.role !== "strip");
    return parts.flatMap((part) => {
      const count = part.count * quantity;
      return Array.from({ length: count }, (_, copy): Label => ({
        identifier,
        part: part.fullName,
        size: `${benchLength(part.length, unit)} × ${benchLength(part.width, unit)} ${unit}`,
        stock: part.stock,
        copy: count === 1 ? "" : `${copy + 1} of ${count}`,
      }));
    });
  });
  if (order === "item") return labels;
  const stocks = [...new Set(labels.map(({ stock }) => stock))];
  return stocks.flatMap((stock) => labels.filter((label) => label.stock === stock));
}

/** One label for every finished enclosure: what it holds, and how large it is outside. */
export function boxLabelsOf(tickets: readonly Ticket[]): readonly Label[] {
  return tickets.flatMap(({ identifier, title, quantity, sized: { assembly, kind, settings } }) => {
    const [x, y, z] = assembly.outside;
    const size = [y, x, z].map((length) => benchLength(length, settings.unit)).join(" × ");
    return Array.from({ length: quantity }, (_, copy): Label => ({
      identifier,
      part: title,
      size: `${size} ${settings.unit}`,
      stock: kind.name,
      copy: quantity === 1 ? "" : `${copy + 1} of ${quantity}`,
    }));
  });
}

/** Labels on sheets, row by row. */
export function labelSheets(
  labels: readonly Label[],
  options: LabelOptions & { readonly identifierSize?: number },
  type: Typesetter,
): readonly Page[] {
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
          options.identifierSize ?? SIZES.identifier,
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
  identifierSize: number,
  type: Typesetter,
): readonly Placed[] {
  const inner = {
    x: box.x + INSET,
    y: box.y + INSET,
    width: box.width - 2 * INSET,
    height: box.height - 2 * INSET,
  };
  const side = Math.min(CODE_MOST, inner.height, inner.width / 2);
  const coded = side >= CODE_LEAST && hasCode(label.identifier);
  const room = inner.width - (coded ? side + CODE_GAP : 0);
  const texts = [
    { text: label.identifier, size: identifierSize, bold: true },
    { text: [label.part, label.copy].filter((text) => text !== "").join(", "), size: SIZES.part, bold: false },
    { text: label.size, size: SIZES.small, bold: false },
    { text: label.stock, size: SIZES.small, bold: false },
  ];
  const lines = linesWithin(texts, room, inner.height, type);
  let y = inner.y;
  const written = lines.map(({ text, size, bold }) => {
    const placed = textLine(text, { x: inner.x, y, width: room }, { size, bold });
    y += lineHeight(size);
    return placed;
  });
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
    ...written,
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

interface Line {
  readonly text: string;
  readonly size: number;
  readonly bold: boolean;
}

/** Texts in lines, each over as many as leave one for every text that follows; its last line is shortened. */
function linesWithin(texts: readonly Line[], width: Mm, height: Mm, type: Typesetter): readonly Line[] {
  let left = height;
  return texts.flatMap((style, index) => {
    const after = texts.slice(index + 1).reduce((sum, { size }) => sum + lineHeight(size), 0);
    const most = Math.max(1, Math.floor((left - after) / lineHeight(style.size)));
    const whole = wrapText(style.text, width, style, type);
    // What does not fit on the label is in the code.
    const kept =
      whole.length <= most
        ? whole
        : [...whole.slice(0, most - 1), shortened(whole.slice(most - 1).join(" "), width, style, type)];
    left -= kept.length * lineHeight(style.size);
    return kept.map((text) => ({ ...style, text }));
  });
}
