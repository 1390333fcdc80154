import fc from "fast-check";
import { readCsv } from "../../src/workbook/readCsv";
import { writeCsv, type CsvValue } from "../../src/workbook/writeCsv";

const bytesOf = (text: string) => new TextEncoder().encode(text);
const textOf = (bytes: Uint8Array) => new TextDecoder("utf-8", { ignoreBOM: true }).decode(bytes);

const FILES: readonly (readonly [
  title: string,
  text: string,
  delimiter: string,
  rows: readonly (readonly string[])[],
])[] = [
  [
    "commas",
    "ID,H,W\r\nA,30,21\r\n",
    ",",
    [
      ["ID", "H", "W"],
      ["A", "30", "21"],
    ],
  ],
  [
    "semicolons and decimal commas",
    "ID;H;W\n1;3,5;2,5\n2;3,5;2,5\n",
    ";",
    [
      ["ID", "H", "W"],
      ["1", "3,5", "2,5"],
      ["2", "3,5", "2,5"],
    ],
  ],
  [
    "semicolons inside comma texts",
    "ID,Size\nA,30 x 20; 4\nB,30 x 20; 4\n",
    ",",
    [
      ["ID", "Size"],
      ["A", "30 x 20; 4"],
      ["B", "30 x 20; 4"],
    ],
  ],
  [
    "tabs",
    "ID\tH\nA, first\t30",
    "\t",
    [
      ["ID", "H"],
      ["A, first", "30"],
    ],
  ],
  [
    "bars",
    "ID|H\nA|30\n",
    "|",
    [
      ["ID", "H"],
      ["A", "30"],
    ],
  ],
  [
    "the notice sep=",
    "sep=;\r\nID;H\r\nA;30\r\n",
    ";",
    [
      ["ID", "H"],
      ["A", "30"],
    ],
  ],
  [
    "quotes, doubled quotes and line breaks in them",
    'ID,Title\n"A","a ""b"", c"\nB,"two\nlines"\n',
    ",",
    [
      ["ID", "Title"],
      ["A", 'a "b", c'],
      ["B", "two\nlines"],
    ],
  ],
  [
    "inch marks outside quotes",
    'ID,H\nA,12"\nB,9"',
    ",",
    [
      ["ID", "H"],
      ["A", '12"'],
      ["B", '9"'],
    ],
  ],
  [
    "titles, blank rows and ragged rows",
    "Survey\n\nID,H,W\nA,30\nB,30,21,9\n",
    ",",
    [["Survey"], [""], ["ID", "H", "W"], ["A", "30"], ["B", "30", "21", "9"]],
  ],
  [
    "old line ends",
    "ID,H\rA,30\r",
    ",",
    [
      ["ID", "H"],
      ["A", "30"],
    ],
  ],
  ["one column", "ID\nA\n", ",", [["ID"], ["A"]]],
  ["nothing", "", ",", []],
];

describe("a text table", () => {
  test.each(FILES)("with %s is read, and written back byte for byte", (_, text, delimiter, rows) => {
    const csv = readCsv(bytesOf(text));
    expect(csv.delimiter).toBe(delimiter);
    expect(csv.rows).toEqual(rows);
    expect(textOf(writeCsv(csv.rows, csv))).toBe(text);
  });

  test("keeps its byte order mark and its encoding", () => {
    const text = "ID;Größe\r\né;½\r\n";
    const wide = (big: boolean, mark: boolean) => {
      const bytes = Buffer.from((mark ? "\ufeff" : "") + text, "utf16le");
      return new Uint8Array(big ? bytes.swap16() : bytes);
    };
    const ansi = new Uint8Array(Buffer.from(text, "latin1"));
    const files = [
      wide(false, true),
      wide(true, true),
      wide(false, false),
      wide(true, false),
      ansi,
      bytesOf(`\ufeff${text}`),
    ];
    const encodings = ["utf-16le", "utf-16be", "utf-16le", "utf-16be", "windows-1252", "utf-8"];
    files.forEach((bytes, i) => {
      const csv = readCsv(bytes);
      expect(csv.encoding).toBe(encodings[i]);
      expect(csv.rows).toEqual([
        ["ID", "Größe"],
        ["é", "½"],
      ]);
      expect(Buffer.from(writeCsv(csv.rows, csv)).equals(Buffer.from(bytes))).toBe(true);
    });
  });

  test("in Windows-1252 becomes UTF-8 when a new text needs it: nothing is lost", () => {
    const csv = readCsv(new Uint8Array(Buffer.from("ID,Größe\n", "latin1")));
    const written = writeCsv([[...csv.rows[0]!, "☃"]], csv);
    expect(readCsv(written).rows).toEqual([["ID", "Größe", "☃"]]);
    expect(readCsv(written).bom).toBe(true);
  });

  test("is refused when it is no text or a quote never closes, with the row", () => {
    expect(() => readCsv(Uint8Array.of(80, 75, 3, 4, 0, 0, 0, 65, 66))).toThrow(
      "csv: got a file with zero bytes, which is no text",
    );
    expect(() => readCsv(bytesOf('a,b\n"x,2\n3,4\n'))).toThrow("csv: got a quote in row 2 that never closes");
    expect(() => readCsv(bytesOf('a,b\n"x" y,2\n'))).toThrow("closes before the end of its cell");
  });

  test("gets new columns beside cells that stay letter for letter", () => {
    const csv = readCsv(bytesOf('ID;H\r\n"A";=1+1\r\nB;"3,5"\r\n'));
    const more: CsvValue[][] = [["outside height"], [40.5], [-3]];
    expect(
      textOf(
        writeCsv(
          csv.rows.map((row, i) => [...row, ...more[i]!]),
          csv,
        ),
      ),
    ).toBe('ID;H;outside height\r\n"A";=1+1;40,5\r\nB;"3,5";-3\r\n');
  });

  test("never runs a new text as a formula, and leaves numbers numbers", () => {
    const written = textOf(writeCsv([["=cmd|x", "+1+1", "-x", "@SUM", "\tx", "\rx", "-3.5", "+4", "a=b", -2]]));
    expect(written).toBe(`\ufeff'=cmd|x,'+1+1,'-x,'@SUM,'\tx,"'\rx",-3.5,+4,a=b,-2\r\n`);
    const odd = textOf(writeCsv([["\n=1+1", "＝1+1", "＋1", "－1", "＠SUM", "１"]]));
    expect(odd).toBe(`\ufeff"'\n=1+1",'＝1+1,'＋1,'－1,'＠SUM,１\r\n`);
  });

  test("comes back as it went, whatever the cells hold", () => {
    const cell = fc.stringMatching(/^[a-z0-9 ,;"\n\t|'.-]{0,8}$/).filter((text) => !/^[=+\-@\t\n]/.test(text));
    fc.assert(
      fc.property(fc.array(fc.array(cell, { minLength: 2, maxLength: 4 }), { minLength: 1, maxLength: 6 }), (rows) => {
        const like = { ...readCsv(bytesOf("a;b\n1;2\n")), rows: [], raw: [] };
        const notice = { ...like, notice: "sep=;\n" };
        expect(readCsv(writeCsv(rows, notice)).rows).toEqual(rows);
      }),
    );
  });
});
