import { recogniseColumns, surveyRows } from "../../src/headings/recognise";
import { summary } from "./recognised";

describe("the cells of a column", () => {
  test("that are no measures make its heading doubtful", () => {
    const found = recogniseColumns([
      ["ID", "H", "W", "D"],
      ["A", "high", 2, 3],
      ["B", "low", 2, 3],
    ]);
    expect(found.ask).toEqual([
      { field: "height", candidates: [{ column: 2, heading: "H" }], reason: "its cells are no measures", needed: true },
    ]);
  });

  test("may be texts that begin as measures do", () => {
    const found = recogniseColumns([
      ["ID", "H", "W", "D"],
      ["A", "10 3/8 in", "c. 20", "½"],
      ["B", "~ 3", "approx. 4", { date: "2024-03-08", serial: 45359 }],
    ]);
    expect(summary(found)).toBe("identifier A, height B, width C, depth D");
  });

  test("headed size may be words, which are no dimensions", () => {
    expect(
      summary(
        recogniseColumns([
          ["ID", "Size", "Housing"],
          ["A", "folio", "tray"],
        ]),
      ),
    ).toBe("identifier A, enclosure C, ?dimensions B");
    expect(
      summary(
        recogniseColumns([
          ["ID", "Size", "Housing"],
          ["A", "30 x 20 x 4 cm", "tray"],
        ]),
      ),
    ).toBe("identifier A, dimensions B, enclosure C");
  });

  test("headed enclosure may be yes and no, which name none", () => {
    expect(
      summary(
        recogniseColumns([
          ["ID", "H", "W", "D", "Enclosure"],
          ["A", 1, 2, 3, "Y"],
        ]),
      ),
    ).toContain("?enclosure E");
  });
});

describe("an option", () => {
  const rows = [
    ["ID", "Ht", "Ht open", "Br", "Br", "Th"],
    ["A", 1, 2, 3, 4, 5],
  ];

  test("names a heading, in any case", () => {
    expect(summary(recogniseColumns(rows, { columns: { height: "HT OPEN", width: "D", depth: "th" } }))).toBe(
      "identifier A, height C, width D, depth F",
    );
  });

  test("is refused when two columns have that heading, with the cure", () => {
    expect(() => recogniseColumns(rows, { columns: { width: "Br" } })).toThrow(
      'width: got "Br"; columns D and E both have that heading; give the column letter, such as D',
    );
  });

  test("is refused when no column has that heading, naming those there are", () => {
    expect(() => recogniseColumns(rows, { columns: { width: "Wide" } })).toThrow(
      'width: got "Wide"; the headings are "ID", "Ht", "Ht open", "Br", "Br", "Th"',
    );
  });

  test("may say that there is no such column", () => {
    expect(summary(recogniseColumns(rows, { columns: { identifier: null, width: "E" } }))).toBe(
      "height B, width E, depth F",
    );
  });

  test("may name a column for a setting", () => {
    const found = recogniseColumns(
      [
        ["ID", "H", "W", "D", "How tight"],
        ["A", 1, 2, 3, "snug"],
      ],
      { settings: ["fit"], columns: { fit: "How tight" } },
    );
    expect(summary(found)).toBe("identifier A, height B, width C, depth D, setting fit E");
    expect(
      surveyRows(
        [
          ["ID", "H", "W", "D", "How tight"],
          ["A", 1, 2, 3, "snug"],
        ],
        found,
      )[0]!.settings,
    ).toEqual({ fit: "snug" });
  });

  test("finds the heading row by the headings it names", () => {
    expect(
      recogniseColumns([["x"], ["Hoogte", "Breedte", "Dikte"], [1, 2, 3]], {
        columns: { height: "Hoogte", width: "Breedte", depth: "Dikte" },
      }),
    ).toMatchObject({
      headingRow: 2,
      lastRow: 3,
    });
  });
});

test("a doubt is asked about in whole sentences", () => {
  const asked = (headings: readonly string[], cells: readonly unknown[]) =>
    recogniseColumns([headings, cells, cells]).questions.map(({ text }) => text);
  expect(asked(["ID", "H", "W", "D", "Enclosure?"], ["A", 300, 210, 40, "tray"])).toEqual([
    'Is column E "Enclosure?" the enclosure? Its heading alone leaves that open.',
  ]);
  expect(asked(["ID", "Height", "Height", "W", "D"], ["A", 300, 300, 210, 40])).toEqual([
    'Which is the height: column B "Height" or column C "Height"? Several columns may be it.',
  ]);
  expect(asked(["ID", "H", "W", "D", "Box no."], ["A", 300, 210, 40, "B7"])).toEqual([
    expect.stringMatching(/^Is column E "Box no." the box that items share\?/),
  ]);
});

test("what was recognised is said in plain words", () => {
  expect(
    recogniseColumns([
      ["Call no.", "H (cm)", "W", "Thk", "Enclosure", "Box"],
      ["A", 1, 2, 3, "tray", "B7"],
    ]).said,
  ).toEqual([
    "headings in row 1, rows 2 to 2",
    'height: column B "H (cm)", in cm',
    'width: column C "W"',
    'depth: column D "Thk"',
    'enclosure: column E "Enclosure"',
    'box: column F "Box" (rows with the same value share one enclosure)',
    'identifier: column A "Call no."',
  ]);
});

test("twenty thousand rows are recognised by a look at their first rows, not by reading them all again and again", () => {
  let looks = 0;
  const counted = (row: unknown[]) =>
    new Proxy(row, {
      get: (cells, name) => {
        looks += 1;
        return Reflect.get(cells, name) as unknown;
      },
    });
  const items = Array.from({ length: 20_000 }, (_, i) => counted([`A ${i}`, "Title", 30, 21, 4, "tray"]));
  const found = recogniseColumns([["ID", "Title", "Height (cm)", "Width (cm)", "Depth (cm)", "Enclosure"], ...items]);
  expect(found.lastRow).toBe(20_001);
  expect(looks).toBeLessThan(items.length);
});
