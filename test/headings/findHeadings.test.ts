import fc from "fast-check";
import { InputError } from "../../src/measure/errors";
import type { RecogniseOptions } from "../../src/headings/recognition";
import { recogniseColumns, surveyRows } from "../../src/headings/recognise";
import { summary } from "./recognised";

const SETTINGS = [
  "fit",
  "fit height",
  "turn-in",
  "wall board",
  "rests on",
  "covering",
  "lining",
  "weight",
  "unit",
  "construction",
];

function recognised(headings: string, options: RecogniseOptions = {}): string {
  return summary(
    recogniseColumns([headings.split("|").map((text) => text.trim())], {
      settings: SETTINGS,
      headingRow: 1,
      ...options,
    }),
  );
}

const HEADING_ROWS: readonly (readonly [headings: string, expected: string])[] = [
  // Plain and well kept.
  [
    "identifier | title | height | width | depth | weight | enclosure",
    "identifier A, title B, height C, width D, depth E, weight F, enclosure G",
  ],
  [
    "Call number | Title | Height (cm) | Width (cm) | Thickness (cm)",
    "identifier A, title B, height C cm, width D cm, depth E cm",
  ],
  [
    "Shelfmark | H (mm) | W (mm) | D (mm) | Wt (g) | Housing",
    "identifier A, height B mm, width C mm, depth D mm, weight E g, enclosure F",
  ],
  [
    "Accession No. | Object name | Ht (cm) | Wd (cm) | Dp (cm) | Weight (kg)",
    "identifier A, title B, height C cm, width D cm, depth E cm, weight F kg",
  ],
  ["ID | H | W | T", "identifier A, height B, width C, depth D"],
  [
    "Inv. No. | Height, mm | Width, mm | Depth, mm | Weight, g",
    "identifier A, height B mm, width C mm, depth D mm, weight E g",
  ],
  ["acc_no | title | height_mm | width_mm | depth_mm", "identifier A, title B, height C mm, width D mm, depth E mm"],
  [
    "callNumber | heightMm | widthMm | thicknessMm | weightKg",
    "identifier A, height B mm, width C mm, depth D mm, weight E kg",
  ],
  ["H_cm | W_cm | D_cm | Box Type", "height A cm, width B cm, depth C cm, enclosure D"],
  ["Item no | Ht in. | Wd in. | Thk in. | Lbs", "identifier A, height B in, width C in, depth D in, ?weight E"],
  ['Item no | H" | W" | D" | Qty', "identifier A, height B in, width C in, depth D in, quantity E"],
  [
    "OBJECT NUMBER | HEIGHT (IN) | WIDTH (IN) | DEPTH (IN) | PRIORITY",
    "identifier A, height B in, width C in, depth D in, priority E",
  ],
  ["Catalogue no. | Height in mm | Width in mm | Thickness in mm", "identifier A, height B mm, width C mm, depth D mm"],
  ["Barcode | Height: | Width: | Depth: | Batch", "identifier A, height B, width C, depth D, batch E"],
  [
    "Museum No. | Max height (cm) | Max width (cm) | Max depth (cm)",
    "identifier A, height B cm, width C cm, depth D cm",
  ],
  [
    "Object ID | Overall height | Overall width | Overall depth | Hazards",
    "identifier A, height B, width C, depth D, hazard E",
  ],
  [
    "Pressmark | Height [cm] | Breadth [cm] | Thickness [cm] | No. of copies",
    "identifier A, height B cm, width C cm, depth D cm, quantity E",
  ],
  ["No. | Title | H. | W. | Th.", "identifier A, title B, height C, width D, depth E"],
  ["# | Description | Hgt | Wdth | Thick", "identifier A, title B, height C, width D, depth E"],
  ["Ref | Height (closed) | Width (closed) | Thickness (closed)", "identifier A, height B, width C, depth D"],
  ["Hmm | Wmm | Dmm", "height A mm, width B mm, depth C mm"],
  ["Weight (lbs) | Ht. | Wdt. | Dpth.", "weight A lb, height B, width C, depth D"],
  // Units and unit columns.
  ["Call no. | H | W | D | Unit", "identifier A, height B, width C, depth D, unit E"],
  ["Call no. | H | W | D | UoM | Mass", "identifier A, height B, width C, depth D, unit E, weight F"],
  [
    "Height (inches) | Width (inches) | Thickness (inches) | Weight (ounces)",
    "height A in, width B in, depth C in, weight D oz",
  ],
  ["H/mm | W/mm | D/mm", "height A mm, width B mm, depth C mm"],
  ["Height - cm | Width - cm | Depth - cm", "height A cm, width B cm, depth C cm"],
  ["H (cm) | W (cm) | D (cm) | W (kg)", "height A cm, width B cm, depth C cm, weight D kg"],
  // Dimension texts.
  ["Shelf mark | Dimensions", "identifier A, dimensions B"],
  ["Accession number | Dimensions (H x W x D, cm) | Housing type", "identifier A, dimensions B cm HWD, enclosure C"],
  ["Reg. no. | Title | Size (mm)", "identifier A, title B, dimensions C mm"],
  ["Obj. no. | HxWxD (cm)", "identifier A, dimensions B cm HWD"],
  ["Obj. no. | Measurements L × W × D mm | Qty.", "identifier A, dimensions B mm LWD, quantity C"],
  ["Inventory number | Dims. (in) | Weight", "identifier A, dimensions B in, weight C"],
  ["Item ID | Dimensions WxHxT", "identifier A, dimensions B WHD"],
  ["Call # | Object size | Recommended housing", "identifier A, dimensions B, enclosure C"],
  ["ID | HWD (cm)", "identifier A, dimensions B cm HWD"],
  // Labels by rank.
  ["No. | Call number | Barcode | Title | H | W | D", "identifier B, title D, height E, width F, depth G"],
  ["ID | Accession number | Name | H | W | D", "identifier B, title C, height D, width E, depth F"],
  ["Title | Description | H | W | D", "title A, height C, width D, depth E"],
  ["Title | H | W | T", "title A, height B, width C, depth D"],
  // Length by elimination, and only then.
  ["ID | L | W | T", "identifier A, height B, width C, depth D"],
  ["ID | Length (mm) | Width (mm) | Thickness (mm)", "identifier A, height B mm, width C mm, depth D mm"],
  ["ID | Height | Length | Depth", "identifier A, height B, width C, depth D"],
  ["ID | L | W | H", "identifier A, width C, height D, ?depth B"],
  ["ID | Length | Width", "identifier A, width C, ?height B"],
  ["ID | Length | Height", "identifier A, height C, ?width B"],
  ["ID | H | W | D | Length", "identifier A, height B, width C, depth D, ?length E"],
  // Doubtful ones ask.
  ["ID | Height | Height | Width | Depth", "identifier A, width D, depth E, ?height B/C"],
  ["ID | Height (cm) | Height (in) | Width | Depth", "identifier A, width D, depth E, ?height B/C"],
  ["ID | Height (cm/in) | Width | Depth", "identifier A, width C, depth D, ?height B"],
  ["ID | Height (open) | Height (framed) | Width | Depth", "identifier A, width D, depth E, ?height B/C"],
  ["ID | Height | Height (open) | Width | Depth", "identifier A, height B, width D, depth E"],
  ["ID | Spine height | Board width | Thickness", "identifier A, depth D, ?height B, ?width C"],
  ["ID | H | W | Depth | Thickness", "identifier A, height B, width C, ?depth D/E"],
  ["ID | H | W | T | D", "identifier A, height B, width C, ?depth D/E"],
  ["ID | H | D", "identifier A, height B, ?depth C"],
  ["ID | Height | Diameter", "identifier A, height B, width C, depth C"],
  ["ID | H | Title", "identifier A, title C, ?height B"],
  ["ID | Width | W | Height | Depth", "identifier A, width B, height D, depth E"],
  ["Call number | Accession number | H | W | D", "height C, width D, depth E, ?identifier A/B"],
  ["ID | H | W | D | Box", "identifier A, height B, width C, depth D, ?enclosure E"],
  ["ID | H | W | D | Enclosure | Box", "identifier A, height B, width C, depth D, enclosure E, box F"],
  ["ID | H | W | D | Enclosure | Box no.", "identifier A, height B, width C, depth D, enclosure E, ?box F"],
  ["ID | H | W | D | Current housing", "identifier A, height B, width C, depth D, ?enclosure E"],
  ["ID | H | W | D | Enclosure needed?", "identifier A, height B, width C, depth D, ?enclosure E"],
  ["ID | H | W | D | Current housing | Proposed housing", "identifier A, height B, width C, depth D, enclosure F"],
  ["ID | H | W | D | Enclosure | Housing", "identifier A, height B, width C, depth D, ?enclosure E/F"],
  ["ID | Height (kg) | Width | Depth", "identifier A, width C, depth D, ?height B"],
  ["ID | H | W | D | Weight (cm)", "identifier A, height B, width C, depth D, ?weight E"],
  ["ID | H | W | D | Volumes", "identifier A, height B, width C, depth D, ?quantity E"],
  ["ID | Format | Housing", "identifier A, enclosure C, ?dimensions B"],
  // Settings by name.
  [
    "ID | H | W | D | Fit | Turn-in (mm)",
    "identifier A, height B, width C, depth D, setting fit E, setting turn-in F mm",
  ],
  [
    "ID | H | W | D | wall board | Rests on",
    "identifier A, height B, width C, depth D, setting wall board E, setting rests on F",
  ],
  ["ID | H | W | D | fit | FIT", "identifier A, height B, width C, depth D, ?fit E/F"],
  ["ID | H | W | D | Weight | Unit", "identifier A, height B, width C, depth D, weight E, unit F"],
  // Left alone.
  ["ID | H | W | D | Notes | Condition | Location | Material", "identifier A, height B, width C, depth D"],
  ["ID | H | W | D | Box height | Shelf width | Unit price", "identifier A, height B, width C, depth D"],
  ["ID | Author | Date | H | W | D | Surveyed by", "identifier A, height D, width E, depth F"],
];

describe("a heading row", () => {
  test.each(HEADING_ROWS)("%s", (headings, expected) => {
    expect(recognised(headings)).toBe(expected);
  });

  test("the table holds at least sixty rows", () => {
    expect(HEADING_ROWS.length).toBeGreaterThanOrEqual(60);
  });

  test("is read alike in any case and with spaces around", () => {
    fc.assert(
      fc.property(fc.constantFrom(...HEADING_ROWS), fc.boolean(), ([headings, expected], upper) => {
        if (/[a-z][A-Z]/.test(headings)) return;
        const changed = headings
          .split("|")
          .map((text) => `  ${upper ? text.trim().toUpperCase() : text.trim().toLowerCase()} `);
        expect(recognised(changed.join("|"))).toBe(expected);
      }),
    );
  });

  test("never gives one column two meanings", () => {
    const words = fc.constantFrom(
      ...new Set(HEADING_ROWS.flatMap(([headings]) => headings.split("|").map((text) => text.trim()))),
    );
    fc.assert(
      fc.property(fc.array(words, { minLength: 1, maxLength: 9 }), (headings) => {
        const { columns, settings } = recogniseColumns([headings], { settings: SETTINGS, headingRow: 1 });
        const places = [...Object.values(columns), ...settings].map(({ column }) => column);
        expect(new Set(places).size).toBe(places.length);
      }),
    );
  });

  test("repeated, never leaves a repeated measure unasked", () => {
    const rows = recogniseColumns([["Height", "Width", "Depth", "Width"]], {});
    expect(rows.columns.width).toBeUndefined();
    expect(rows.ask).toEqual([expect.objectContaining({ field: "width", needed: true })]);
  });
});

describe("the place of the headings", () => {
  const title = ["Housing survey, reading room"];
  const headings = ["Call number", "Title", "H (cm)", "W (cm)", "D (cm)", "Enclosure"];
  const item = ["A 1", "First", 30, 21, 4.5, "lidded box"];

  test("is below titles and blank rows", () => {
    const found = recogniseColumns([
      title,
      [],
      ["Surveyed in spring", null, "Height of shelves: 35 cm"],
      [],
      headings,
      item,
      item,
    ]);
    expect(found).toMatchObject({ headingRow: 5, firstRow: 6, lastRow: 7, firstColumn: 1, lastColumn: 6 });
    expect(found.said[0]).toBe("headings in row 5, rows 6 to 7");
  });

  test("may be two rows, one grouping the other", () => {
    const found = recogniseColumns([
      title,
      ["Call number", "Title", "Dimensions (mm)", null, null, "Weight (g)", "Enclosure"],
      [null, null, "H", "W", "D", null, null],
      ["A 1", "First", 300, 210, 45, 900, "tray"],
    ]);
    expect(found).toMatchObject({ headingRow: 3, firstRow: 4, lastRow: 4 });
    expect(summary(found)).toBe("identifier A, title B, height C mm, width D mm, depth E mm, weight F g, enclosure G");
  });

  test("takes the unit from a heading above", () => {
    const found = recogniseColumns([
      [null, "Size in cm"],
      ["Call number", "H", "W", "D"],
      ["A 1", 30, 21, 4.5],
    ]);
    expect(summary(found)).toBe("identifier A, height B cm, width C cm, depth D cm");
  });

  test("may have a row of units below, which is no item", () => {
    const found = recogniseColumns([
      ["ID", "H", "W", "D", "Weight"],
      [null, "cm", "(cm)", "cm", "kg"],
      ["A 1", 30, 21, 4.5, 1],
    ]);
    expect(found).toMatchObject({ firstRow: 3, lastRow: 3 });
    expect(summary(found)).toBe("identifier A, height B cm, width C cm, depth D cm, weight E kg");
  });

  test("is that of the table, when one holds the survey", () => {
    const region = { headingRow: 2, firstColumn: 2, lastColumn: 4, lastRow: 3 };
    const found = recogniseColumns([["Height"], ["x", "H", "W", "D", "Weight"], ["y", 1, 2, 3, 4]], { region });
    expect(summary(found)).toBe("height B, width C, depth D");
    expect(found).toMatchObject({ firstRow: 3, lastRow: 3, firstColumn: 2, lastColumn: 4 });
  });

  test("is asked for when no row looks like it", () => {
    expect(() =>
      recogniseColumns([
        ["a", "b"],
        [1, 2],
      ]),
    ).toThrow("heading row: got no row with headings in the first 2");
    expect(() => recogniseColumns([])).toThrow(InputError);
  });

  test("ends before a note below a blank row, and keeps items without measures", () => {
    const found = recogniseColumns([
      headings,
      item,
      ["A 2", "Not measured yet"],
      [],
      ["Measured with the covers closed"],
    ]);
    expect(found.lastRow).toBe(3);
  });

  test("keeps blank rows between items: one row in, one row out", () => {
    const rows = [headings, item, [], item];
    const recognition = recogniseColumns(rows);
    const read = surveyRows(rows, recognition);
    expect(read.map(({ row }) => row)).toEqual([2, 3, 4]);
    expect(read[0]!.values).toMatchObject({ identifier: "A 1", height: 30, depth: 4.5, enclosure: "lidded box" });
    expect(read[1]!.values).toMatchObject({ identifier: null, height: null });
  });

  test("ends at the first gap on the right, so that a list beside the survey is not part of it", () => {
    const found = recogniseColumns([
      ["ID", "H", "W", "D", "Notes", null, "Key"],
      ["A", 1, 2, 3, "", null, "x = urgent"],
    ]);
    expect(found.lastColumn).toBe(5);
  });

  test("passes over columns of an earlier run", () => {
    const found = recogniseColumns(
      [
        ["ID", "H", "W", "D", "outside height"],
        ["A", 1, 2, 3, 4],
      ],
      { ignore: [5] },
    );
    expect(found.lastColumn).toBe(4);
    expect(found.others).toEqual([]);
  });
});
