import { GUIDE_CELLS, GUIDE_HEADINGS } from "../settings/starterGuide";
import { STARTER_STOCK, stockCells } from "../settings/starterStock";
import { settingsTable } from "../settings/settingsTable";
import { plainRows } from "../item/answers";
import type { SizedSurvey } from "../survey/sizeSurvey";
import { cutListToRead } from "./cutListToRead";
import { cellName } from "../workbook/cellRef";
import type { NewName, NewSheet } from "../workbook/edits";
import { choicesSheet } from "./boardColumns";
import { GUIDE_NAME, SETTINGS_NAME, STOCK_NAME } from "./keptRanges";
import type { BookSurvey } from "./readBookSurvey";

/** What a run asks for. */
interface MadeSheetsAsked {
  /** Plain values, which read no settings. */
  readonly values: boolean;
  readonly figures: readonly string[];
  readonly cutList: boolean;
}

/** A new sheet, with the name that formulas know it by. */
interface MadeSheet {
  readonly sheet: NewSheet;
  readonly name?: NewName;
}

/** Sheets that the workbook lacks: settings, stock, board guide, choices, and a cut list where one is asked for. */
export function madeSheets(
  found: BookSurvey["found"],
  { values, figures, cutList }: MadeSheetsAsked,
  sized: SizedSurvey,
): readonly MadeSheet[] {
  const made: MadeSheet[] = [];
  if (!values && found.settings === undefined) {
    const [headings = [], ...rows] = settingsTable(sized.settings);
    const kept = [headings, ...rows].map(([setting, value, , fallback, unit, meaning, standing]) =>
      [setting, value, unit, meaning, standing, fallback].map((cell) => cell ?? ""),
    );
    made.push(namedSheet(SETTINGS_NAME, kept, [22, 16, 10, 70, 18, 40], NAMED_SETTINGS));
  }
  if (!values && found.stock === undefined) {
    const stock = sized.settings.stock.length > 0 ? sized.settings.stock : STARTER_STOCK;
    made.push(namedSheet(STOCK_NAME, stockCells(stock)));
  }
  if (!values && found.guide === undefined) made.push(guideSheet());
  if (!values && figures.length > 0) made.push({ sheet: choicesSheet(sized) });
  if (cutList)
    made.push({
      sheet: { name: CUTLIST_SHEET, rows: plainRows(cutListToRead(sized)), replaceable: true },
    });
  return made;
}

/** The sheet of the cut list. */
export const CUTLIST_SHEET = "Cut list";

/** Setting and value: every call of a formula carries what the name spans, and the meanings are for people. */
const NAMED_SETTINGS = 2;

function guideSheet(): MadeSheet {
  const { sheet } = namedSheet(GUIDE_SHEET, GUIDE_CELLS, [20, 12, 22, 22, 22, 18, 14, 70]);
  const last = cellName(GUIDE_CELLS.length + SPARE_GUIDE_ROWS, GUIDE_HEADINGS.length);
  const area = `$A$1:${last.replace(/^([A-Z]+)(\d+)$/, "$$$1$$$2")}`;
  return { sheet, name: { name: GUIDE_NAME, refersTo: `'${GUIDE_SHEET}'!${area}` } };
}

/** The sheet of the board guide, which is the user's to edit. */
const GUIDE_SHEET = "board guide";

/** Rows below the guide that its name covers too, so that a row added there counts. */
const SPARE_GUIDE_ROWS = 30;

function namedSheet(
  name: string,
  rows: readonly (readonly (string | number)[])[],
  widths?: readonly number[],
  named = rows[0]!.length,
): MadeSheet {
  const last = cellName(rows.length, named).replace(/^([A-Z]+)(\d+)$/, "$$$1$$$2");
  return {
    sheet: { name, rows, ...(widths === undefined ? {} : { widths }) },
    name: { name, refersTo: `${name}!$A$1:${last}` },
  };
}
