import { InputError, shown } from "../measure/errors";
import { readLength } from "../measure/readLength";
import type { Mm } from "../measure/units";
import { LABEL_SHEETS, labelMeasures, LEAST_LABEL, type LabelGrid } from "../paper/labelGrid";
import { USUAL_LABELS, type LabelOptions } from "../paper/labelSheets";
import type { Paper } from "../paper/page";

/** As they were typed. */
export interface LabelCommand {
  readonly sheet: string | undefined;
  readonly size: string | undefined;
  readonly gap: string | undefined;
  readonly margin: string | undefined;
  readonly order: string | undefined;
}

const WIDEST_MARGIN: Mm = 40;

/**
 * How the labels of a sheet lie: by the name of a sheet, or columns x rows with their own measures.
 *
 * @throws InputError naming the option, for what is not understood and for labels that do not fit the paper
 */
export function labelOptions(command: LabelCommand, paper: Paper): Omit<LabelOptions, "paper"> {
  const order = command.order ?? USUAL_LABELS.order;
  if (order !== "item" && order !== "stock") throw new InputError("label-order", shown(order), "give item or stock");
  const grid = namedSheet(command, paper) ?? gridOf(command);
  const { width, height, left, top } = labelMeasures(grid, paper);
  if (width < LEAST_LABEL.width || height < LEAST_LABEL.height)
    throw new InputError("labels", shown(command.sheet), EXPECTED);
  if (left < 0 || top < 0)
    throw new InputError(
      "label-size",
      shown(command.size),
      `give measures of which ${grid.columns} x ${grid.rows} fit on ${paper}`,
    );
  return { ...grid, order };
}

const EXPECTED = `give columns x rows of a sheet, such as 3x8, or one of ${Object.keys(LABEL_SHEETS).join(", ")}; a label at least ${LEAST_LABEL.width} x ${LEAST_LABEL.height} mm`;

function namedSheet({ sheet, size, gap, margin }: LabelCommand, paper: Paper): LabelGrid | undefined {
  const named = LABEL_SHEETS[(sheet ?? "").toLowerCase()];
  if (named === undefined) return undefined;
  if (named.paper !== paper)
    throw new InputError("labels", shown(sheet), `that sheet is ${named.paper}`, `add --paper ${named.paper}`);
  if (size !== undefined || gap !== undefined || margin !== undefined)
    throw new InputError("labels", shown(sheet), "a sheet by name has its own size, gap and margin");
  return named;
}

function gridOf({ sheet, size, gap, margin }: LabelCommand): LabelGrid {
  const [, columns, rows] = /^\s*(\d{1,2})\s*[x×]\s*(\d{1,2})\s*$/i.exec(sheet ?? "3x8") ?? [];
  if (!(Number(columns) > 0 && Number(rows) > 0)) throw new InputError("labels", shown(sheet), EXPECTED);
  const around = margin === undefined ? USUAL_LABELS.margin : Number(margin);
  if (!(around >= 0 && around <= WIDEST_MARGIN))
    throw new InputError("label-margin", shown(margin), `give millimetres, 0 to ${WIDEST_MARGIN}`);
  const counts = { columns: Number(columns), rows: Number(rows), margin: around };
  if (size === undefined) {
    if (gap !== undefined) throw new InputError("label-gap", shown(gap), "give --label-size too");
    return counts;
  }
  if (margin !== undefined)
    throw new InputError("label-margin", shown(margin), "labels of a given size lie in the middle of the sheet");
  const [width, height] = pairOf("label-size", size, "63.5 x 38.1 or 2 5/8 in x 1 in");
  if (gap === undefined) return { ...counts, size: { width, height } };
  const [across, down] = pairOf("label-gap", gap, "2.5 x none");
  return { ...counts, size: { width, height }, gap: { across, down } };
}

/** Two lengths with an x between them, plain numbers in mm. */
function pairOf(argument: string, text: string, example: string): readonly [Mm, Mm] {
  const [one, other, ...more] = text.split(/[x×]/i).map((length) => length.trim());
  if (one === undefined || other === undefined || more.length > 0)
    throw new InputError(argument, shown(text), `give two lengths such as ${example}`);
  const read = (length: string) => readLength(length, { argument, unit: "mm", zero: argument === "label-gap" });
  return [read(one), read(other)];
}
