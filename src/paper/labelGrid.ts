import { MM_PER, type Mm } from "../measure/units";
import { PAPERS, type Box, type Paper } from "./page";

/** How the labels of a sheet lie. */
export interface LabelGrid {
  readonly columns: number;
  readonly rows: number;
  /** Around the labels of a sheet that share it out evenly; most label sheets have one above and below. */
  readonly margin: Mm;
  /** A label's own measures, by which the labels lie in the middle of the sheet; undefined where they share it out. */
  readonly size?: { readonly width: Mm; readonly height: Mm };
  /** Between columns and between rows, where labels have their own measures. */
  readonly gap?: { readonly across: Mm; readonly down: Mm };
}

/** Labels smaller than this hold no words that can be read. */
export const LEAST_LABEL = { width: 45, height: 20 } as const;

const inches = (width: number, height: number) => ({ width: width * MM_PER.in, height: height * MM_PER.in });

/** Sheets of labels by their paper and how many labels they have. From memory: lay the first print on a sheet. */
export const LABEL_SHEETS: Readonly<Record<string, LabelGrid & { readonly paper: Paper }>> = {
  "a4-24": { paper: "A4", columns: 3, rows: 8, margin: 0, size: { width: 70, height: 37 } },
  "a4-21": {
    ...{ paper: "A4", columns: 3, rows: 7, margin: 0 },
    ...{ size: { width: 63.5, height: 38.1 }, gap: { across: 2.5, down: 0 } },
  },
  "a4-14": {
    ...{ paper: "A4", columns: 2, rows: 7, margin: 0 },
    ...{ size: { width: 99.1, height: 38.1 }, gap: { across: 2.5, down: 0 } },
  },
  "a4-8": {
    ...{ paper: "A4", columns: 2, rows: 4, margin: 0 },
    ...{ size: { width: 99.1, height: 67.7 }, gap: { across: 2.5, down: 0 } },
  },
  "letter-30": {
    ...{ paper: "Letter", columns: 3, rows: 10, margin: 0 },
    ...{ size: inches(2.625, 1), gap: { across: MM_PER.in / 8, down: 0 } },
  },
  "letter-10": {
    ...{ paper: "Letter", columns: 2, rows: 5, margin: 0 },
    ...{ size: inches(4, 2), gap: { across: (3 * MM_PER.in) / 16, down: 0 } },
  },
};

/** `24 a sheet, 70 × 37 mm`; in inches for paper of that trade. */
export function labelSheetWords({ paper, columns, rows, size }: (typeof LABEL_SHEETS)[string]): string {
  const [unit, digits] = paper === "Letter" ? (["in", 3] as const) : (["mm", 1] as const);
  const shown = (length: Mm) => Number((length / MM_PER[unit]).toFixed(digits));
  return `${columns * rows} a sheet, ${shown(size!.width)} × ${shown(size!.height)} ${unit}`;
}

/** The room of each label of a sheet, row by row. */
export function labelPlaces(grid: LabelGrid, paper: Paper): readonly Box[] {
  const { columns, rows } = grid;
  const { width, height, gap, left, top } = labelMeasures(grid, paper);
  return Array.from({ length: columns * rows }, (_, index): Box => {
    const [column, row] = [index % columns, Math.floor(index / columns)];
    return { x: left + column * (width + gap.across), y: top + row * (height + gap.down), width, height };
  });
}

const NO_GAP = { across: 0, down: 0 } as const;

/** Measures of a label, and where the first one lies; below zero where the labels are larger than the sheet. */
export function labelMeasures({ columns, rows, margin, size, gap = NO_GAP }: LabelGrid, paper: Paper) {
  const sheet = PAPERS[paper];
  if (size === undefined)
    return {
      width: (sheet.width - 2 * margin) / columns,
      height: (sheet.height - 2 * margin) / rows,
      ...{ gap: NO_GAP, left: margin, top: margin },
    };
  const middle = (whole: Mm, each: Mm, count: number, between: Mm) =>
    (whole - count * each - (count - 1) * between) / 2;
  return {
    ...{ width: size.width, height: size.height, gap },
    left: middle(sheet.width, size.width, columns, gap.across),
    top: middle(sheet.height, size.height, rows, gap.down),
  };
}
