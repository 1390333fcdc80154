import { Document, HeadingLevel, Packer, Paragraph, Table, TableCell, TableRow, TextRun, WidthType } from "docx";
import type { Narrative } from "../application/section";
import type { PrintedTable } from "../estimate/printedTable";

/** Half points: tables are set small, so that the budget fits the page. */
const TABLE_SIZE = 15;
/** Twentieths of a point. */
const SPACE = { after: 120 };
const WHOLE_WIDTH = { size: 100, type: WidthType.PERCENTAGE };

/** The narrative as a document to edit: headings, paragraphs and tables. */
export async function narrativeDocx({ title, notice, sections }: Narrative): Promise<Uint8Array> {
  const children = [
    new Paragraph({ text: title, heading: HeadingLevel.TITLE }),
    ...(notice === ""
      ? []
      : [new Paragraph({ spacing: SPACE, children: [new TextRun({ text: notice, bold: true })] })]),
    ...sections.flatMap(({ heading, paragraphs, tables }) => [
      new Paragraph({ text: heading, heading: HeadingLevel.HEADING_1 }),
      ...paragraphs.map((text) => new Paragraph({ text, spacing: SPACE })),
      ...tables.flatMap(([name, rows]) => [
        new Paragraph({ text: name, heading: HeadingLevel.HEADING_2, keepNext: true }),
        tableOf(rows),
        new Paragraph({ text: "" }),
      ]),
    ]),
  ];
  const document = new Document({ title, creator: "Enclosure Columns", sections: [{ children }] });
  return new Uint8Array(await Packer.toArrayBuffer(document));
}

function tableOf([headings = [], ...rows]: PrintedTable): Table {
  const cells = (row: readonly string[], bold: boolean) =>
    headings.map((_, at) => {
      const run = new TextRun({ text: row[at] ?? "", bold, size: TABLE_SIZE });
      return new TableCell({ children: [new Paragraph({ children: [run] })] });
    });
  return new Table({
    width: WHOLE_WIDTH,
    rows: [
      new TableRow({ tableHeader: true, children: cells(headings, true) }),
      ...rows.map((row) => new TableRow({ cantSplit: true, children: cells(row, row[0] === "total") })),
    ],
  });
}
