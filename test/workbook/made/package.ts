import { strToU8, unzipSync, zipSync } from "fflate";

/** A package from its parts as texts or bytes, zipped by a library and not by our writer. */
export function packageOf(parts: Readonly<Record<string, string | Uint8Array>>): Uint8Array {
  return zipSync(
    Object.fromEntries(
      Object.entries(parts).map(([name, part]) => [name, typeof part === "string" ? strToU8(part) : part]),
    ),
  );
}

/** The unpacked parts, read by a library and not by our reader. */
export function partsOf(bytes: Uint8Array): Readonly<Record<string, Uint8Array>> {
  return unzipSync(bytes);
}

export const MAIN = "http://schemas.openxmlformats.org/spreadsheetml/2006/main";
export const R = "http://schemas.openxmlformats.org/officeDocument/2006/relationships";
export const PACKAGE = "http://schemas.openxmlformats.org/package/2006";
const TYPE = "application/vnd.openxmlformats-officedocument";

/** The relationships of a part: `[id, kind, target]`. */
export function relations(...list: readonly (readonly [string, string, string])[]): string {
  const each = list.map(([id, kind, target]) => `<Relationship Id="${id}" Type="${R}/${kind}" Target="${target}"/>`);
  return `<?xml version="1.0"?><Relationships xmlns="${PACKAGE}/relationships">${each.join("")}</Relationships>`;
}

/** Content types: `[part, type after application/vnd.openxmlformats-officedocument]`. */
export function contentTypes(...list: readonly (readonly [string, string])[]): string {
  const each = list.map(
    ([part, type]) => `<Override PartName="/${part}" ContentType="${type.includes("/") ? type : TYPE + type}"/>`,
  );
  return (
    `<?xml version="1.0"?><Types xmlns="${PACKAGE}/content-types"><Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/>` +
    `<Default Extension="xml" ContentType="application/xml"/><Default Extension="png" ContentType="image/png"/>` +
    `<Default Extension="vml" ContentType="${TYPE}.vmlDrawing"/>${each.join("")}</Types>`
  );
}

/** The parts of a small workbook with one sheet, whose text is given whole or as its rows. */
export function smallParts(
  sheet: string,
  more: Readonly<Record<string, string | Uint8Array>> = {},
): Record<string, string | Uint8Array> {
  return {
    "[Content_Types].xml": contentTypes(
      ["xl/workbook.xml", ".spreadsheetml.sheet.main+xml"],
      ["xl/worksheets/sheet1.xml", ".spreadsheetml.worksheet+xml"],
    ),
    "_rels/.rels": relations(["rId1", "officeDocument", "xl/workbook.xml"]),
    "xl/workbook.xml": `<workbook xmlns="${MAIN}" xmlns:r="${R}"><sheets><sheet name="Survey" sheetId="1" r:id="rId1"/></sheets></workbook>`,
    "xl/_rels/workbook.xml.rels": relations(["rId1", "worksheet", "worksheets/sheet1.xml"]),
    "xl/worksheets/sheet1.xml": /<(\w+:)?worksheet/.test(sheet)
      ? sheet
      : `<worksheet xmlns="${MAIN}" xmlns:r="${R}"><sheetData>${sheet}</sheetData></worksheet>`,
    ...more,
  };
}

export function small(sheet: string, more: Readonly<Record<string, string | Uint8Array>> = {}): Uint8Array {
  return packageOf(smallParts(sheet, more));
}
