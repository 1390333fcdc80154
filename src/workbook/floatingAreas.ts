import { MOST_COLUMNS, MOST_ROWS, type Area } from "./cellRef";
import type { SheetInfo, Workbook } from "./openWorkbook";
import { partOf, relationsOf } from "./parts";
import { attribute, readXml } from "./readXml";

/** What a picture or chart is held by: two corners, or one corner (or a distance from the sheet's first) and a size. */
const ANCHORS: ReadonlySet<string> = new Set(["twoCellAnchor", "oneCellAnchor", "absoluteAnchor"]);
/** A column and a row of the usual size, in the units of a drawing (914,400 an inch): 64 and 20 pixels. */
const COLUMN = 609_600;
const ROW = 190_500;

/**
 * The cells that charts, pictures and shapes of a sheet cover. Where a drawing gives a size and no second corner, columns
 * and rows are taken to be of the usual size.
 *
 * Source: ECMA-376 part 1, 20.5.2 (spreadsheet drawings).
 */
export function floatingAreas({ zip }: Workbook, { part }: SheetInfo): readonly Area[] {
  return relationsOf(zip, part)
    .filter(({ kind, outside }) => kind === "drawing" && !outside)
    .flatMap(({ target }) => areasIn(zip, target));
}

function areasIn(zip: Workbook["zip"], name: string): readonly Area[] {
  const entry = partOf(zip, name);
  if (entry === undefined) return [];
  const areas: Area[] = [];
  let corner: "from" | "to" | undefined;
  let inside = false;
  let shape = false;
  let field = "";
  let found: Record<string, number> = {};
  readXml(entry, {
    open: (tag) => {
      field = "";
      if (ANCHORS.has(tag.local)) {
        inside = true;
        shape = false;
        found = {};
      } else if (!inside || shape) return;
      else if (tag.local === "from" || tag.local === "to") corner = tag.local;
      else if (corner !== undefined && (tag.local === "col" || tag.local === "row")) field = `${corner} ${tag.local}`;
      else if (corner === undefined && (tag.local === "ext" || tag.local === "pos"))
        for (const side of ["cx", "cy", "x", "y"]) {
          const length = Number(attribute(tag, side) ?? Number.NaN);
          if (!Number.isNaN(length)) found[side] = length;
        }
      // The size inside of the shape is that of its own drawing.
      else if (corner === undefined) shape = true;
    },
    text: (piece) => {
      if (field !== "") found[field] = Number(piece);
    },
    close: (tag) => {
      field = "";
      if (tag.local === corner) corner = undefined;
      if (!ANCHORS.has(tag.local)) return;
      inside = false;
      const area = areaOf(found);
      if (area !== undefined) areas.push(area);
    },
  });
  return areas;
}

function areaOf(found: Readonly<Record<string, number>>): Area | undefined {
  const left = (found["from col"] ?? Math.floor((found["x"] ?? Number.NaN) / COLUMN)) + 1;
  const top = (found["from row"] ?? Math.floor((found["y"] ?? Number.NaN) / ROW)) + 1;
  const right = found["to col"] === undefined ? left + Math.ceil((found["cx"] ?? 0) / COLUMN) : found["to col"] + 1;
  const bottom = found["to row"] === undefined ? top + Math.ceil((found["cy"] ?? 0) / ROW) : found["to row"] + 1;
  const area = { top, left, bottom: Math.min(bottom, MOST_ROWS), right: Math.min(right, MOST_COLUMNS) };
  return Object.values(area).every((side) => Number.isInteger(side) && side > 0) ? area : undefined;
}
