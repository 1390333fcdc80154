import type { BookPort, WrittenEdits } from "../../../src/host/port";
import type { OpenGrid } from "../../../src/page/openGrid";
import type { Book } from "../../../src/workbook/book";
import { cellName } from "../../../src/workbook/cellRef";
import type { SheetGrid } from "../../../src/workbook/readSheet";
import { sheetNamed } from "../../../src/workbook/sheetNamed";
import { leave, open, page } from "../openPage";
import { contractOf, type Held, type OpenInHost } from "../../host/contract";

declare const openGrid: OpenGrid;
declare const bookPort: BookPort;
declare const steps: WrittenEdits[];

contractOf("the local page", async (bytes): Promise<OpenInHost> => {
  await open("survey.xlsx", bytes);
  await page.evaluate(() => void Object.assign(globalThis, { steps: [] }));
  return { port, held, close: leave };
});

/** The port of the page, asked from outside: what cannot leave the page stays there. */
const port: Pick<BookPort, "read" | "write"> = {
  read: async (): Promise<Book> => {
    // As text: a thousand cells take a hundredth of the time.
    const text = await page.evaluate(async () => {
      const read = await bookPort.read();
      const plain = ({ sheet, rows, uncached, formats, merged, locked }: SheetGrid) => ({
        sheet,
        rows,
        uncached,
        formats: formats ?? [],
        merged,
        locked,
      });
      return JSON.stringify({
        sheets: read.sheets,
        tables: read.tables,
        names: read.names,
        grids: read.sheets.map(({ name }) => plain(read.grid(name))),
      });
    });
    const { grids, ...book } = JSON.parse(text) as Book & { readonly grids: readonly SheetGrid[] };
    return {
      ...book,
      grid: (wanted, { lastRow } = {}) => {
        const { name } = sheetNamed(book, wanted);
        const { formats, ...grid } = grids.find(({ sheet }) => sheet === name)!;
        return {
          ...grid,
          // What is undefined in a list is null in its text.
          formats: formats!.map((row) => row.map((format) => format ?? undefined)),
          rows: grid.rows.slice(0, lastRow),
          formulas: new Map(),
        };
      },
    };
  },
  write: async (edits): Promise<WrittenEdits> => {
    const { place, columns, notes } = await page.evaluate(async (asked) => {
      const step = await bookPort.write(asked);
      return { place: steps.push(step) - 1, columns: step.columns, notes: step.notes };
    }, edits);
    return { columns, notes, undo: () => page.evaluate((index) => steps[index]!.undo(), place) };
  },
};

async function held(name: string): Promise<ReadonlyMap<string, Held>> {
  const text = await page.evaluate((wanted) => {
    const sheet = openGrid.workbook().getSheetByName(wanted)!;
    const range = sheet.getRange(0, 0, sheet.getMaxRows(), sheet.getMaxColumns());
    const [formulas, values, formats] = [range.getFormulas(), range.getRawValues(), range.getNumberFormats()];
    return JSON.stringify(
      values.flatMap((row, r) =>
        row.flatMap((value, c) => {
          const content = formulas[r]![c]! || value;
          return content === null || content === undefined || content === ""
            ? []
            : [[r + 1, c + 1, [content, formats[r]![c] || "General"]]];
        }),
      ),
    );
  }, name);
  const cells = JSON.parse(text) as readonly (readonly [row: number, column: number, held: Held])[];
  return new Map(cells.map(([row, column, each]) => [cellName(row, column), each]));
}
