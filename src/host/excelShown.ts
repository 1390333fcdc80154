import type { Area } from "../workbook/cellRef";
import { ownColumns } from "../workbook/ownMarks";
import { readCells, type CellRequest, type HostView, type Matrix } from "./excelRead";

/** What numbers show, by sheet, of the columns where that is not the number itself. */
export async function shownTexts(
  context: Excel.RequestContext,
  look: Pick<HostView, "sheets" | "names">,
  requests: readonly CellRequest[],
  values: readonly Matrix[],
  codes: readonly Matrix[],
): Promise<ReadonlyMap<string, readonly (readonly (string | undefined)[])[]>> {
  const own = new Set(ownColumns(look).map(({ sheet, column }) => `${column} ${sheet}`));
  const wanted = requests.flatMap(({ sheet, area }, place) =>
    columnsShown(values[place]!, codes[place]!).flatMap((index) => {
      const column = area.left + index;
      const cells = values[place]!.map((row) => [row[index]]);
      const request: CellRequest = { sheet, area: { ...area, left: column, right: column }, what: "text" };
      return own.has(`${column} ${sheet}`) ? [] : [{ request, cells }];
    }),
  );
  const texts = await readCells(
    context,
    wanted.map(({ request }) => request),
  );
  const shown = new Map<string, (string | undefined)[][]>();
  wanted.forEach(({ request: { sheet, area }, cells }, place) => {
    const placed = shown.get(sheet) ?? [];
    shown.set(sheet, placed);
    placedTexts(area, texts[place]!, cells, () => true).forEach((row, r) => {
      while (placed.length <= r) placed.push([]);
      row.forEach((text, c) => (placed[r]![c] = text));
    });
  });
  return shown;
}

/** Texts about cells that hold numbers, placed as the rows of their sheet. */
export function placedTexts(
  { top, left }: Area,
  texts: Matrix,
  cells: Matrix,
  isWanted: (text: unknown) => boolean,
): (string | undefined)[][] {
  const above = Array.from({ length: top - 1 }, (): (string | undefined)[] => []);
  return [
    ...above,
    ...texts.map((row, r) => {
      const placed: (string | undefined)[] = [];
      row.forEach((text, c) => {
        if (typeof cells[r]![c] === "number" && isWanted(text)) placed[left - 1 + c] = String(text);
      });
      return placed;
    }),
  ];
}

/** Whether a number format shows something else than the number. */
export function isCode(code: unknown): boolean {
  return code !== "General" && code !== "@" && code !== "";
}

/** Columns that hold numbers of another format than General in their first rows; of a longer sheet also numbers among texts. */
function columnsShown(values: Matrix, codes: Matrix): readonly number[] {
  const width = values[0]?.length ?? 0;
  return Array.from({ length: width }, (_, c) => c).filter((c) => {
    const isNumber = (r: number) => typeof values[r]![c] === "number";
    const isFormatted = codes.some((row, r) => isNumber(r) && isCode(row[c]));
    if (isFormatted || codes.length === values.length) return isFormatted;
    const texts = values.filter((row, r) => !isNumber(r) && row[c] !== "").length;
    return texts > FEW_TEXTS && values.some((_row, r) => isNumber(r));
  });
}

/** A heading, and a title or two above it. */
const FEW_TEXTS = 3;
