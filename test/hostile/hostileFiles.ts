import { contentTypes, MAIN, packageOf, R, relations, smallParts } from "../workbook/made/package";

/** A file made to harm its reader, or so odd that a reader may harm itself. */
export interface HostileFile {
  readonly name: string;
  readonly extension: ".xlsx" | ".csv";
  readonly bytes: () => Uint8Array;
}

const HEADINGS = ["id", "height", "width", "depth", "enclosure"];
const ITEM = ["A", "300", "210", "40", "tray"];
const DEEPEST = 200_000;

/** The files of the bench and of the tests that count work. Sizes are those at which an earlier build fell. */
export const HOSTILE_FILES: readonly HostileFile[] = [
  book("namespaces declared in one tag", () => ({
    "xl/worksheets/sheet1.xml": sheet(rows([HEADINGS, ITEM]), namespaces(0, 20_000)),
  })),
  book("a namespace declared in each of many nested tags", () => ({
    "xl/worksheets/sheet1.xml": withExtension(
      Array.from({ length: 5_000 }, (_, i) => `<x${namespaces(i, 1)}>`).join("") + "</x>".repeat(5_000),
    ),
  })),
  book("namespaces declared in each of many tags", () => ({
    "xl/worksheets/sheet1.xml": withExtension(
      `<x>${`<y${namespaces(0, 100)}/>`.repeat(20_000)}</x>`,
      namespaces(0, 2_000),
    ),
  })),
  book("tags nested without end", () => ({
    "xl/worksheets/sheet1.xml": withExtension("<x>".repeat(DEEPEST) + "</x>".repeat(DEEPEST)),
  })),
  book("white space in the XML declaration", () => ({
    "xl/worksheets/sheet1.xml": `<?xml version="1.0"${" ".repeat(200_000)}?>${sheet(rows([HEADINGS, ITEM]))}`,
  })),
  book("white space in a tag", () => ({
    "xl/worksheets/sheet1.xml": sheet(
      rows([HEADINGS, ITEM]).replace(`<row r="2">`, `<row${" ".repeat(200_000)}r="2"${" ".repeat(200_000)}>`),
    ).replace(
      "<sheetData>",
      `<cols${" ".repeat(200_000)}><col min="1" max="1"${" \n".repeat(100_000)}/></cols><sheetData>`,
    ),
  })),
  book("attributes in a tag", () => ({
    "xl/worksheets/sheet1.xml": sheet(rows([HEADINGS, ITEM]).replace(`<row r="2"`, `<row r="2"${attributes(20_000)}`)),
  })),
  book("brackets in a number format", () => ({
    ...stylesPart(`<numFmts count="1"><numFmt numFmtId="200" formatCode="${"[".repeat(200_000)}"/></numFmts>`),
    "xl/worksheets/sheet1.xml": sheet(rows([HEADINGS, ITEM])),
  })),
  book("opening parentheses in a heading", () => ({
    "xl/worksheets/sheet1.xml": sheet(rows([[...HEADINGS, "(".repeat(32_767)], ITEM])),
  })),
  book("one word of a heading again and again", () => ({
    "xl/worksheets/sheet1.xml": sheet(
      rows([[...HEADINGS, "height" + " mm".repeat(10_000), "mm ".repeat(10_000), "a ".repeat(16_000)], ITEM]),
    ),
  })),
  book("one part listed as 100,000 sheets", () => ({
    "xl/workbook.xml": `<workbook xmlns="${MAIN}" xmlns:r="${R}"><sheets>${Array.from(
      { length: 100_000 },
      (_, i) => `<sheet name="Survey${i}" sheetId="${i + 1}" r:id="rId1"/>`,
    ).join("")}</sheets></workbook>`,
    "xl/worksheets/sheet1.xml": sheet(rows([HEADINGS, ITEM])),
  })),
  book("one table listed 100,000 times", () => ({
    "xl/worksheets/sheet1.xml": sheet(rows([HEADINGS, ITEM])),
    "xl/worksheets/_rels/sheet1.xml.rels": relations().replace(
      "</Relationships>",
      `${Array.from({ length: 100_000 }, (_, i) => `<Relationship Id="r${i}" Type="x/table" Target="../tables/table1.xml"/>`).join("")}</Relationships>`,
    ),
    "xl/tables/table1.xml": table("A1:E2", HEADINGS),
  })),
  book("an item in the last row", () => ({
    "xl/worksheets/sheet1.xml": sheet(rows([HEADINGS]) + rowAt(1_048_576, ITEM)),
  })),
  book("formulas without results in the last column", () => ({
    "xl/worksheets/sheet1.xml": sheet(
      rows([HEADINGS]) +
        Array.from({ length: 2_000 }, (_, i) => rowAt(i + 2, ITEM, `<c r="XFD${i + 2}"><f>A1</f></c>`)).join(""),
    ),
  })),
  book("the name settings over a whole sheet", () => ({
    ...named("settings", "Survey!$A$1:$XFD$1048576"),
    "xl/worksheets/sheet1.xml": sheet(rows([HEADINGS, ITEM])),
  })),
  book("the name settings over a whole full sheet", () => ({
    ...named("settings", "Survey!$A$1:$XFD$1048576"),
    "xl/worksheets/sheet1.xml": sheet(rows([HEADINGS, ...Array.from({ length: 21_000 }, () => ITEM)])),
  })),
  book("the same row twice", () => ({
    "xl/worksheets/sheet1.xml": sheet(rows([HEADINGS, ITEM]) + rowAt(2, ITEM)),
  })),
  book("rows out of order", () => ({
    "xl/worksheets/sheet1.xml": sheet(rows([HEADINGS]) + rowAt(3, ITEM) + rowAt(2, ITEM)),
  })),
  book("the same cell twice", () => ({
    "xl/worksheets/sheet1.xml": sheet(rows([HEADINGS]) + rowAt(2, ITEM, `<c r="E2" t="str"><v>slipcase</v></c>`)),
  })),
  book("cells out of order", () => ({
    "xl/worksheets/sheet1.xml": sheet(
      rows([HEADINGS]) + rowAt(2, ITEM.slice(0, 4), `<c r="G2"><v>1</v></c><c r="E2" t="str"><v>tray</v></c>`),
    ),
  })),
  book("merged areas without end", () => ({
    "xl/worksheets/sheet1.xml": sheet(rows([HEADINGS, ITEM])).replace(
      "</sheetData>",
      `</sheetData><mergeCells>${`<mergeCell ref="G1:G1048576"/>`.repeat(130_000)}</mergeCells>`,
    ),
  })),
  book("defined names without end", () => ({
    "xl/workbook.xml": workbookPart(
      `<definedNames>${Array.from({ length: 40_000 }, (_, i) => `<definedName name="_enclosure_column_${i}">Survey!$A$1:$A$2</definedName>`).join("")}</definedNames>`,
    ),
    "xl/worksheets/sheet1.xml": sheet(rows([HEADINGS, ITEM])),
  })),
  book("cell styles without end", () => ({
    ...stylesPart(`<cellXfs count="1">${`<xf numFmtId="0"/>`.repeat(300_000)}</cellXfs>`),
    "xl/worksheets/sheet1.xml": sheet(rows([HEADINGS, ITEM])),
  })),
  book("relationships without end", () => ({
    "xl/_rels/workbook.xml.rels": relations(["rId1", "worksheet", "worksheets/sheet1.xml"]).replace(
      "</Relationships>",
      `${Array.from({ length: 110_000 }, (_, i) => `<Relationship Id="x${i}" Type="x/calcChain" Target="calcChain.xml"/>`).join("")}</Relationships>`,
    ),
    "xl/worksheets/sheet1.xml": sheet(rows([HEADINGS, ITEM])),
  })),
  book("parts without end", () => ({
    ...Object.fromEntries(Array.from({ length: 15_000 }, (_, i) => [`xl/media/${i}.xml`, "<a/>"])),
    "xl/worksheets/sheet1.xml": sheet(rows([HEADINGS, ITEM])),
  })),
  book("a shared formula over a whole sheet", () => ({
    "xl/worksheets/sheet1.xml": sheet(
      rows([HEADINGS]) + rowAt(2, ITEM, `<c r="F2"><f t="shared" si="0" ref="F2:XFD1048576">A1</f><v>1</v></c>`),
    ),
  })),
  text("400,000 plain rows", () =>
    lines([HEADINGS, ...Array.from({ length: 400_000 }, (_, i) => [`A${i}`, ...ITEM.slice(1)])]),
  ),
  text("a row of 200,000 cells", () => lines([HEADINGS, [...ITEM, ...Array.from({ length: 200_000 }, () => "x")]])),
  text("quotes without end", () => `${HEADINGS.join()}\n${`"a""`.repeat(100_000)}\n`),
  text("quotes that open in every cell", () => `${HEADINGS.join()}\n${`"a,`.repeat(100_000)}\n`),
  ...[
    ["H 1\\n", "H 1\n", 2_000],
    ["a.", "a.", 50_000],
    ["x\\n", "x\n", 50_000],
    ["1 x", "1 x ", 50_000],
    ["(", "(", 50_000],
    ["a: ", "a: ", 50_000],
    ["(1 cm)", "(1 cm) ", 50_000],
    ["overall", "overall ", 20_000],
    ["spaces", " ", 200_000],
    ["figures", "9", 200_000],
  ].map(([shown, piece, times]) =>
    text(`a dimension text of ${String(shown)} ${String(times)} times`, () =>
      lines([
        ["id", "dimensions", "enclosure"],
        ["A", `"${String(piece).repeat(Number(times))}"`, "tray"],
        ["B", `"30 x 20 x 4 cm ${String(piece).repeat(Number(times))}"`, "tray"],
      ]),
    ),
  ),
  text("a heading of 200,000 letters", () => lines([[...HEADINGS, "(mm ".repeat(50_000)], ITEM])),
  text("a row of totals 200,000 letters long", () => lines([HEADINGS, ITEM, ["total".repeat(40_000), "", "", "", ""]])),
];

function book(name: string, parts: () => Readonly<Record<string, string>>): HostileFile {
  return {
    name,
    extension: ".xlsx",
    bytes: () => packageOf(smallParts("", { "xl/worksheets/sheet1.xml": sheet(rows([HEADINGS, ITEM])), ...parts() })),
  };
}

function text(name: string, content: () => string): HostileFile {
  return { name, extension: ".csv", bytes: () => new TextEncoder().encode(content()) };
}

function lines(table: readonly (readonly string[])[]): string {
  return `${table.map((row) => row.join(",")).join("\n")}\n`;
}

export function sheet(data: string, more = ""): string {
  return `<worksheet xmlns="${MAIN}" xmlns:r="${R}"${more}><sheetData>${data}</sheetData></worksheet>`;
}

function withExtension(inside: string, more = ""): string {
  return sheet(rows([HEADINGS, ITEM]), more).replace("</worksheet>", `<extLst>${inside}</extLst></worksheet>`);
}

export function rows(table: readonly (readonly string[])[]): string {
  return table.map((row, r) => rowAt(r + 1, row)).join("");
}

export function rowAt(row: number, cells: readonly string[], more = ""): string {
  const written = cells.map((cell, c) => {
    const name = `${String.fromCharCode(65 + c)}${row}`;
    return /^\d+$/.test(cell) ? `<c r="${name}"><v>${cell}</v></c>` : `<c r="${name}" t="str"><v>${cell}</v></c>`;
  });
  return `<row r="${row}">${written.join("")}${more}</row>`;
}

function namespaces(from: number, count: number): string {
  return Array.from({ length: count }, (_, i) => ` xmlns:n${from + i}="u${from + i}"`).join("");
}

function attributes(count: number): string {
  return Array.from({ length: count }, (_, i) => ` a${i}="1"`).join("");
}

function workbookPart(more: string): string {
  return `<workbook xmlns="${MAIN}" xmlns:r="${R}"><sheets><sheet name="Survey" sheetId="1" r:id="rId1"/></sheets>${more}</workbook>`;
}

function named(name: string, refersTo: string): Readonly<Record<string, string>> {
  return {
    "xl/workbook.xml": workbookPart(
      `<definedNames><definedName name="${name}">${refersTo}</definedName></definedNames>`,
    ),
  };
}

export function table(ref: string, columns: readonly string[]): string {
  const list = columns.map((column, i) => `<tableColumn id="${i + 1}" name="${column}"/>`).join("");
  return `<table xmlns="${MAIN}" id="1" name="Items" displayName="Items" ref="${ref}"><autoFilter ref="${ref}"/><tableColumns count="${columns.length}">${list}</tableColumns></table>`;
}

/** A styles part with its place in the package. */
export function stylesPart(inside: string): Readonly<Record<string, string>> {
  return {
    "[Content_Types].xml": contentTypes(
      ["xl/workbook.xml", ".spreadsheetml.sheet.main+xml"],
      ["xl/worksheets/sheet1.xml", ".spreadsheetml.worksheet+xml"],
      ["xl/styles.xml", ".spreadsheetml.styles+xml"],
    ),
    "xl/_rels/workbook.xml.rels": relations(
      ["rId1", "worksheet", "worksheets/sheet1.xml"],
      ["rId2", "styles", "styles.xml"],
    ),
    "xl/styles.xml": `<styleSheet xmlns="${MAIN}">${inside}</styleSheet>`,
  };
}
