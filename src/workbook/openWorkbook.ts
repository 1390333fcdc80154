import { damaged, tooMuch } from "./damaged";
import { contentTypesOf, neededPart, partOf, relationsOf, type ContentTypes, type Relation } from "./parts";
import { attribute, attributeOf, readXml } from "./readXml";
import { readTable, type TableInfo } from "./readTable";
import { openZip, type Zip } from "./zip";

/** A sheet as the workbook lists it. A chart sheet is listed, but has no cells (`cells` is false). */
export interface SheetInfo {
  readonly name: string;
  readonly state: "visible" | "hidden" | "veryHidden";
  readonly cells: boolean;
  readonly part: string;
  readonly sheetId: number;
  readonly relation: string;
}

export interface DefinedName {
  readonly name: string;
  readonly refersTo: string;
  /** The sheet that alone knows this name; undefined when the whole workbook does. */
  readonly sheet: string | undefined;
  readonly hidden: boolean;
  readonly comment: string;
}

/** A workbook opened for reading and for the surgical edit. The packed parts are kept as they came. */
export interface Workbook {
  readonly zip: Zip;
  /** The main part, usually `xl/workbook.xml`. */
  readonly part: string;
  readonly relations: readonly Relation[];
  readonly types: ContentTypes;
  /** Namespace of the main part. */
  readonly namespace: string;
  readonly sheets: readonly SheetInfo[];
  readonly tables: readonly TableInfo[];
  readonly names: readonly DefinedName[];
  /** Dates count from 1904 instead of 1900. */
  readonly date1904: boolean;
  /** It carries a VBA project, which is kept as it is. */
  readonly macros: boolean;
  /** Saved as "Strict Open XML": read, never edited. */
  readonly strict: boolean;
  /** It carries a digital signature, which any edit would break: read, never edited. */
  readonly signed: boolean;
  /** Sheets may not be added, moved or deleted without a password. */
  readonly structureLocked: boolean;
}

/**
 * Opens an .xlsx or .xlsm from its bytes. Sheets are unpacked only when they are read.
 *
 * @throws InputError when the bytes are no such workbook, are damaged, or try to harm the reader (see `openZip`)
 */
export function openWorkbook(bytes: Uint8Array): Workbook {
  const workbook = openPackage(openZip(bytes));
  if (workbook.sheets.length === 0) throw damaged("a workbook without a sheet");
  return workbook;
}

/** The same, from parts at hand; a new workbook starts without a sheet. */
export function openPackage(zip: Zip): Workbook {
  refuseOtherPackages(zip);
  const types = contentTypesOf(zip);
  const part = mainPart(zip);
  checkMainType(types.of(part), part);
  const relations = relationsOf(zip, part);
  const book = readBook(zip, part);
  const byId = new Map(relations.map((relation) => [relation.id, relation]));
  const sheets = book.sheets.map((sheet) => sheetInfo(sheet, byId, types, zip));
  refuseTwice(sheets.map((sheet) => sheet.part));
  const tables = sheets.filter((sheet) => sheet.cells).flatMap((sheet) => tablesOf(zip, sheet));
  refuseTwice(tables.map((table) => table.part));
  return {
    zip,
    part,
    relations,
    types,
    namespace: book.namespace,
    sheets,
    tables,
    names: book.names.map(({ local, ...name }) => ({
      ...name,
      sheet: local === undefined ? undefined : sheets[local]?.name,
    })),
    date1904: book.date1904,
    macros: relations.some((relation) => relation.kind === "vbaProject"),
    strict: book.namespace.startsWith(STRICT),
    signed: [...zip.keys()].some((name) => name.toLowerCase().startsWith("_xmlsignatures/")),
    structureLocked: book.structureLocked,
  };
}

/** An XML boolean: `1`, `true` (LibreOffice) or absent. */
export function isTrue(value: string | undefined): boolean {
  return value === "1" || value === "true";
}

/** A workbook has some dozens of names; one for each of a thousand columns is odd, but no harm. */
const MOST_NAMES = 10_000;
/** A workbook has some dozens of sheets. */
const MOST_SHEETS = 2_000;

const STRICT = "http://purl.oclc.org/ooxml/";
const WORKSHEET = "application/vnd.openxmlformats-officedocument.spreadsheetml.worksheet+xml";
const MAIN_TYPES: readonly string[] = [
  "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet.main+xml",
  "application/vnd.openxmlformats-officedocument.spreadsheetml.template.main+xml",
  "application/vnd.ms-excel.sheet.macroEnabled.main+xml",
  "application/vnd.ms-excel.template.macroEnabled.main+xml",
];

interface ListedSheet {
  readonly name: string;
  readonly state: string;
  readonly sheetId: number;
  readonly relation: string;
}

function refuseOtherPackages(zip: Zip): void {
  if (zip.has("mimetype")) throw damaged("an OpenDocument file (.ods)", "save it in LibreOffice or Excel as .xlsx");
  if (!partOf(zip, "[Content_Types].xml")) throw damaged("a zip archive that is not a workbook");
}

function mainPart(zip: Zip): string {
  const main = relationsOf(zip, "").find((relation) => relation.kind === "officeDocument" && !relation.outside);
  if (!main) throw damaged("a package without a main part");
  return neededPart(zip, main.target).name;
}

function checkMainType(type: string | undefined, part: string): void {
  if (type !== undefined && MAIN_TYPES.includes(type)) return;
  if (type?.includes("sheet.binary")) throw damaged("a binary workbook (.xlsb)", "save it in Excel as .xlsx");
  if (type?.includes("wordprocessingml") || type?.includes("presentationml")) {
    throw damaged("a text document or presentation", "give the survey as .xlsx or .csv");
  }
  throw damaged(`a package whose main part ${part} has the content type ${type ?? "none"}`);
}

function readBook(zip: Zip, part: string) {
  const sheets: ListedSheet[] = [];
  const names: (Omit<DefinedName, "sheet"> & { local: number | undefined })[] = [];
  let namespace = "";
  let date1904 = false;
  let structureLocked = false;
  let name: Omit<(typeof names)[number], "refersTo"> | undefined;
  let text = "";
  readXml(neededPart(zip, part), {
    open: (tag) => {
      namespace ||= tag.uri;
      if (tag.uri !== namespace) return;
      if (tag.local === "workbookPr") date1904 = isTrue(attribute(tag, "date1904"));
      if (tag.local === "workbookProtection") structureLocked = isTrue(attribute(tag, "lockStructure"));
      if (tag.local === "sheet") {
        if (sheets.length >= MOST_SHEETS) throw tooMuch(`more than ${MOST_SHEETS} sheets`);
        sheets.push({
          name: attribute(tag, "name") ?? "",
          state: attribute(tag, "state") ?? "visible",
          sheetId: Number(attribute(tag, "sheetId")),
          relation: attributeOf(tag, "id", "/relationships") ?? "",
        });
      }
      if (tag.local === "definedName") {
        const local = attribute(tag, "localSheetId");
        text = "";
        name = {
          name: attribute(tag, "name") ?? "",
          local: local === undefined ? undefined : Number(local),
          hidden: isTrue(attribute(tag, "hidden")),
          comment: attribute(tag, "comment") ?? "",
        };
      }
    },
    text: (piece) => {
      if (name) text += piece;
    },
    close: (tag) => {
      if (!name || tag.local !== "definedName") return;
      names.push({ ...name, refersTo: text });
      if (names.length > MOST_NAMES) throw tooMuch(`more than ${MOST_NAMES} defined names`);
      name = undefined;
    },
  });
  return { sheets, names, namespace, date1904, structureLocked };
}

/** A part that is listed again and again would be read as often. */
function refuseTwice(parts: readonly string[]): void {
  const seen = new Set<string>();
  for (const part of parts) {
    if (seen.has(part)) throw damaged(`the part ${part} listed twice`);
    seen.add(part);
  }
}

function sheetInfo(
  listed: ListedSheet,
  relations: ReadonlyMap<string, Relation>,
  types: ContentTypes,
  zip: Zip,
): SheetInfo {
  const relation = relations.get(listed.relation);
  if (!relation) throw damaged(`the sheet "${listed.name}" without its part`);
  const part = neededPart(zip, relation.target).name;
  const cells = relation.kind === "worksheet";
  if (cells && types.of(part) !== WORKSHEET) {
    throw damaged(`the sheet "${listed.name}" with the content type ${types.of(part) ?? "none"}`);
  }
  const state = listed.state === "hidden" || listed.state === "veryHidden" ? listed.state : "visible";
  return { name: listed.name, state, cells, part, sheetId: listed.sheetId, relation: listed.relation };
}

function tablesOf(zip: Zip, sheet: SheetInfo): TableInfo[] {
  const parts = relationsOf(zip, sheet.part)
    .filter((relation) => relation.kind === "table")
    .map((relation) => neededPart(zip, relation.target));
  refuseTwice(parts.map(({ name }) => name));
  return parts.map((part) => readTable(part, sheet.name));
}
