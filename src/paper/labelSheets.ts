import { benchLength, nearestMark } from "../measure/benchLength";
import type { Mm } from "../measure/units";
import { hasCode } from "./codeModules";
import { PAPERS, rectangle, type Page, type Paper, type Placed } from "./page";
import { lineHeight, textLine } from "./textBlocks";
import { linesWithin, withMore } from "./linesWithin";
import { labelPlaces, type LabelGrid } from "./labelGrid";
import { NO_PLAN, type PlanPlaces } from "./planPlaces";
import type { Ticket } from "./ticket";
import { numberedParts } from "./ticketBoards";
import type { Typesetter } from "./typesetter";

export interface LabelOptions extends LabelGrid {
  readonly paper: Paper;
  /** Item by item, or stock by stock as the boards are cut. */
  readonly order: "item" | "stock";
}

export const USUAL_LABELS = { columns: 3, rows: 8, margin: 0, order: "item" } as const;

/** A label of one piece, or of one finished enclosure. */
export interface Label {
  readonly identifier: string;
  /** Number and part, or title of what is in the enclosure. */
  readonly part: string;
  /** `2 of 4`; empty for a single piece. */
  readonly copy: string;
  readonly size: string;
  /** Where a finished enclosure is kept; empty where the survey does not say. */
  readonly shelf: string;
  /** What is printed below where there is room, the most wanted first. */
  readonly more: readonly string[];
  /** What the code reads back as. */
  readonly code: string;
  readonly stock: string;
}

/** Printers do not print to the rim of the paper, and labels are never fed quite straight. */
const INSET: Mm = 3.5;
/** Of the identifier on a finished box, which is read from a shelf, points. */
export const BOX_IDENTIFIER = 16;
const SIZES = { identifier: 12, low: 9, body: 9 } as const;
/** On a lower label the identifier is no larger than the rest. */
const LOW: Mm = 20;
const CODE_LEAST: Mm = 13;
const CODE_MOST: Mm = 22;
const CODE_GAP: Mm = 2;
/** Letters and code grow with a label that is larger than this inside, up to a limit. */
const USUAL_INSIDE = { width: 63, height: 30 } as const;
const MOST_GROWTH = 1.5;
const RIM_WEIGHT: Mm = 0.08;
const RIM_ROUNDNESS: Mm = 1;

/** One label for every piece that is cut: with its number on the ticket, its grain, and its name on the cutting plan. */
export function labelsOf(
  tickets: readonly Ticket[],
  order: LabelOptions["order"],
  places: PlanPlaces = NO_PLAN,
): readonly Label[] {
  const labels = tickets.flatMap((ticket) => {
    const { identifier, quantity, sized } = ticket;
    const { answerUnit: unit } = sized.settings;
    // A strip over a joint is too small for a label.
    const parts = numberedParts(ticket).filter(({ part: { placed } }) => placed?.role !== "strip");
    return parts.flatMap(({ number, part }) => {
      const count = part.count * quantity;
      const on = places(identifier, part.fullName);
      const name = `${number} ${part.fullName}`;
      const coded = `${identifier}; ${name}`;
      return Array.from({ length: count }, (_, copy): Label => ({
        identifier,
        part: name,
        copy: count === 1 ? "" : `${copy + 1} of ${count}`,
        size: `${benchLength(part.length, unit)} × ${benchLength(part.width, unit)} ${unit}`,
        shelf: "",
        more: [
          part.grain === "either" ? "grain either way" : `grain ${part.grain}`,
          ...(on[copy] === undefined ? [] : [on[copy]]),
          part.stock,
        ],
        code: hasCode(coded) ? coded : identifier,
        stock: part.stock,
      }));
    });
  });
  if (order === "item") return labels;
  const stocks = [...new Set(labels.map(({ stock }) => stock))];
  return stocks.flatMap((stock) => labels.filter((label) => label.stock === stock));
}

/** One label for every finished enclosure: what it holds, how large it is outside, and the shelf that it is for. */
export function boxLabelsOf(tickets: readonly Ticket[]): readonly Label[] {
  return tickets.flatMap(({ identifier, title, quantity, shelf, sized: { assembly, kind, settings } }) => {
    const [x, y, z] = assembly.outside;
    const size = [y, x, z].map((length) => nearestMark(length, settings.answerUnit)).join(" × ");
    return Array.from({ length: quantity }, (_, copy): Label => ({
      identifier,
      part: title,
      copy: quantity === 1 ? "" : `${copy + 1} of ${quantity}`,
      size: `${size} ${settings.answerUnit}`,
      shelf: shelf === "" ? "" : `shelf ${shelf}`,
      more: [kind.name],
      code: identifier,
      stock: kind.name,
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
  const { columns, rows } = options;
  const places = labelPlaces(options, options.paper);
  const each = columns * rows;
  return Array.from({ length: Math.ceil(labels.length / each) }, (_, page): Page => {
    const own = labels.slice(page * each, (page + 1) * each);
    return {
      width,
      height,
      bookmark: `Labels ${page + 1}`,
      placed: own.flatMap((label, index) => {
        return labelAt(label, places[index]!, options.identifierSize ?? SIZES.identifier, type);
      }),
    };
  });
}

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
  const larger = Math.min(inner.width / USUAL_INSIDE.width, inner.height / USUAL_INSIDE.height);
  const growth = Math.min(MOST_GROWTH, Math.max(1, larger));
  const body = SIZES.body * growth;
  const side = Math.min(CODE_MOST * growth, inner.height, inner.width / 2);
  const coded = side >= CODE_LEAST && hasCode(label.code);
  const room = inner.width - (coded ? side + CODE_GAP : 0);
  const large = inner.height < LOW ? SIZES.low : identifierSize * growth;
  const texts = [
    { text: label.identifier, size: large, bold: true },
    { text: [label.part, label.copy].filter((text) => text !== "").join(", "), size: body, bold: false },
    ...[label.shelf, label.size].filter((text) => text !== "").map((text) => ({ text, size: body, bold: false })),
  ];
  const more = label.more.map((text) => ({ text, size: body, bold: false }));
  const lines = withMore(linesWithin(texts, room, inner.height, type), more, room, inner.height, type);
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
            text: label.code,
          },
        ]
      : []),
  ];
}
