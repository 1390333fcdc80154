import { STARTER_STOCK, stockCells, STOCK_HEADINGS } from "../../src/settings/starterStock";
import { MATERIALS } from "../../src/settings/stock";
import { isStockHeading, readStockTable } from "../../src/settings/stockTable";

test("the starter table prints and reads back as itself", () => {
  const cells = stockCells(STARTER_STOCK);
  expect(cells[0]).toEqual([...STOCK_HEADINGS]);
  expect(readStockTable(cells, "in")).toEqual(STARTER_STOCK);
});

test("every field of a row, each heading in any writing", () => {
  const [row] = readStockTable(
    [
      [
        "STOCK",
        "Material",
        "Thickness (pt)",
        "sheet-length",
        "Sheet  Width",
        "grain",
        "Price",
        "pack",
        "mass (g/m2)",
      ].concat(["modulus along (GPa)", "modulus across", "Size Limit (cm)", "on hand", "supplier", "Item Number"]),
      [" bench board ", "BOARD", 80, "1 m", 700, "Free", "3,50", "10", 1290, 2.4, "1,1", 60, 12, "Quay Board", 4711],
    ],
    "mm",
  );
  expect(row).toEqual({
    stock: "bench board",
    material: "board",
    caliper: 2.032,
    caliperAsGiven: 80,
    sheetLength: 1000,
    sheetWidth: 700,
    grain: "free",
    price: 3.5,
    pack: 10,
    massGm2: 1290,
    modulusAlongGpa: 2.4,
    modulusAcrossGpa: 1.1,
    sizeLimit: 600,
    onHand: 12,
    passesPat: undefined,
    buffered: undefined,
    permanence: undefined,
    supplier: "Quay Board",
    itemNumber: "4711",
    quoteDate: undefined,
    examplePrice: false,
  });
});

test("what a row leaves blank, in whatever way, is not given", () => {
  for (const blank of ["", null, undefined, 0, "  "]) {
    const [row] = readStockTable(
      [
        ["stock", "material", "caliper", "sheet length", "sheet width", "grain", "price", "pack", "on hand"],
        ["cloth", "covering", blank, blank, 1000, blank, blank, blank, blank],
      ],
      "mm",
    );
    expect(row).toMatchObject({
      caliper: 0,
      caliperAsGiven: 0,
      sheetLength: undefined,
      sheetWidth: 1000,
      grain: "fixed",
      price: undefined,
      pack: 1,
      onHand: undefined,
    });
  }
});

test("the caliper as given is kept, number or text, so that a filter on the table matches it", () => {
  const rows = readStockTable(
    [
      ["stock", "material", "caliper (pt)"],
      ["a", "board", 80],
      ["b", "board", "2 mm"],
      ["c", "board", "5/64 in"],
    ],
    "mm",
  );
  expect(rows.map((row) => row.caliperAsGiven)).toEqual([80, "2 mm", "5/64 in"]);
  expect(rows.map((row) => row.caliper)).toEqual([2.032, 2, 1.984375]);
});

test.each(MATERIALS)(
  "%s is a material; board and card alone need a caliper, of 0.3 (card 0.15) to 10 mm",
  (material) => {
    const read = (caliper: number) => () =>
      readStockTable(
        [
          ["stock", "material", "caliper"],
          ["a", material, caliper],
        ],
        "mm",
      );
    const isBoard = material === "board" || material === "card";
    for (const caliper of [0.3, 10]) expect(read(caliper)).not.toThrow();
    const least = material === "card" ? 0.15 : 0.3;
    for (const caliper of [0, least - 0.01, 10.1]) {
      if (isBoard) expect(read(caliper)).toThrow(`give a caliper from ${least} to 10 mm`);
      else expect(read(caliper)).not.toThrow();
    }
  },
);

test("one stock may have rows of several sheet sizes, when material and caliper agree", () => {
  const rows = readStockTable(
    [
      ["stock", "material", "caliper", "sheet length"],
      ["grey", "board", 2, 1000],
      ["Grey", "board", 2, 1400],
    ],
    "mm",
  );
  expect(rows.map((row) => row.sheetLength)).toEqual([1000, 1400]);
});

test("blank rows and rows of zeros, as a range beyond the data holds, are passed over", () => {
  const rows = readStockTable(
    [
      ["stock", "material", "caliper"],
      ["", "", ""],
      ["a", "board", 2],
      [0, 0, 0],
    ],
    "mm",
  );
  expect(rows.map((row) => row.stock)).toEqual(["a"]);
});

describe("a heading row is known by stock and material, or stock and caliper", () => {
  test.each([
    [["stock", "material"], true],
    [["Stock", "price", "CALIPER (pt)"], true],
    [["name of it", "material"], false],
    [["material", "caliper"], false],
    [["stock", "value"], false],
    [["setting", "value"], false],
    [[2, "board"], false],
    [[], false],
  ])("%j: %p", (cells, known) => {
    expect(isStockHeading(cells)).toBe(known);
  });

  test("brackets within a heading belong to its name; the last ones hold its unit", () => {
    expect(() =>
      readStockTable(
        [
          ["stock", "material", "caliper (our own) (furlong)"],
          ["a", "lining", 2],
        ],
        "mm",
      ),
    ).not.toThrow();
    expect(() =>
      readStockTable(
        [
          ["stock", "material", "caliper (furlong)"],
          ["a", "lining", 2],
        ],
        "mm",
      ),
    ).toThrow('stock table heading caliper: got "furlong"; give mm, cm, m, in or ft (pt for a caliper)');
  });
});
