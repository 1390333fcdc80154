import type { Browser } from "playwright-core";
import type { BookPort, WrittenEdits } from "../../src/host/port";
import type { OpenGrid } from "../../src/page/openGrid";
import type { Book } from "../../src/workbook/book";
import { cellName } from "../../src/workbook/cellRef";
import type { SheetGrid } from "../../src/workbook/readSheet";
import { sheetNamed } from "../../src/workbook/sheetNamed";
import { launched, opened, type OpenPage } from "./browser";
import { contractOf, type Held, type OpenInHost } from "../host/contract";

declare const openGrid: OpenGrid;
declare const bookPort: BookPort;
declare const steps: WrittenEdits[];

let browser: Browser;
beforeAll(async () => {
  browser = await launched();
});
afterAll(() => browser?.close());

contractOf("the local page", async (bytes): Promise<OpenInHost> => {
  const at = await opened(browser, "survey.xlsx", bytes);
  await at.page.evaluate(() => void Object.assign(globalThis, { steps: [] }));
  return {
    port: portOf(at),
    held: (sheet) => heldIn(at, sheet),
    close: async () => {
      await at.close();
      expect([at.outside, at.wrong]).toEqual([[], []]);
    },
  };
});

/** The port of the page, asked from outside: what cannot leave the page stays there. */
function portOf({ page }: OpenPage): Pick<BookPort, "read" | "write"> {
  return {
    read: async (): Promise<Book> => {
      const { grids, ...book } = await page.evaluate(async () => {
        const read = await bookPort.read();
        const plain = ({ sheet, rows, uncached, formats, merged, locked }: SheetGrid) => ({
          sheet,
          rows,
          uncached,
          formats: formats ?? [],
          merged,
          locked,
        });
        return {
          sheets: read.sheets,
          tables: read.tables,
          names: read.names,
          grids: read.sheets.map(({ name }) => plain(read.grid(name))),
        };
      });
      return {
        ...book,
        grid: (wanted, { lastRow } = {}) => {
          const { name } = sheetNamed(book, wanted);
          const grid = grids.find(({ sheet }) => sheet === name)!;
          return { ...grid, rows: grid.rows.slice(0, lastRow), formulas: new Map() };
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
}

async function heldIn({ page }: OpenPage, name: string): Promise<ReadonlyMap<string, Held>> {
  const { formulas, values, formats } = await page.evaluate((wanted) => {
    const sheet = openGrid.workbook().getSheetByName(wanted)!;
    const range = sheet.getRange(0, 0, sheet.getMaxRows(), sheet.getMaxColumns());
    return { formulas: range.getFormulas(), values: range.getRawValues(), formats: range.getNumberFormats() };
  }, name);
  const held = new Map<string, Held>();
  values.forEach((row, r) =>
    row.forEach((value, c) => {
      const content = formulas[r]![c]! || value;
      if (content === null || content === undefined || content === "") return;
      held.set(cellName(r + 1, c + 1), [content, formats[r]![c] || "General"]);
    }),
  );
  return held;
}
