import { MM_PER_POINT, type Mm } from "../measure/units";
import type { StockRow } from "./stock";

/**
 * The starter stock table, to copy and edit: names, prices and sheet sizes are invented; calipers are usual ones.
 * Boards for keeping come first; grey board, which is not permanent, comes last.
 * Board mass: 645 kg/m3, the density of a greyboard of 1290 g/m2 at 2.0 mm (bulk after ISO 534); the rest from memory.
 */
export const STARTER_STOCK: readonly StockRow[] = [
  conservation(board("conservation board 1.5", 1.5, 4.2)),
  conservation(board("conservation board 2", 2, 5.4)),
  conservation(board("conservation board 2.5", 2.5, 6.8)),
  conservation(board("conservation board 3", 3, 8.1)),
  conservation(sheet("corrugated board 1.6", "board", 1.6, 560, 3.9)),
  conservation(card("conservation card 10 pt", 10, 180, 1.3)),
  conservation(card("conservation card 20 pt", 20, 360, 2.3)),
  conservation(card("conservation card 40 pt", 40, 700, 4.1)),
  conservation(card("conservation card 60 pt", 60, 1030, 5.9)),
  conservation(sheet("folding card 0.4", "card", 0.4, 300, 1.1)),
  photoSafe(sheet("unbuffered card 0.5", "card", 0.5, 375, 2.6)),
  { ...sheet("book cloth", "covering", 0.3, 240, 14), sheetLength: undefined, sheetWidth: 1000 },
  conservation(sheet("lining paper", "lining", 0.15, 120, 0.9)),
  photoSafe(sheet("unbuffered lining paper", "lining", 0.15, 120, 1.4)),
  { ...board("grey board 1.5", 1.5, 2.4), permanence: "none" },
  { ...board("grey board 2", 2, 3.1), permanence: "none" },
  { ...board("grey board 2.5", 2.5, 3.9), permanence: "none" },
  { ...board("grey board 3", 3, 4.7), permanence: "none" },
  tape("cotton tape for ties", 12, 0.4),
  tape("hook and loop tape", 20, 1.8),
  tape("elastic band", 10, 0.9),
  { ...sheet("clasp", "closure", 0, 0, 3.5), sheetLength: undefined, sheetWidth: undefined, massGm2: undefined },
];

/** Headings of the starter table, as `ENC.STOCK` shows them. */
export const STOCK_HEADINGS = [
  "stock",
  "material",
  "caliper (mm)",
  "sheet length (mm)",
  "sheet width (mm)",
  "grain",
  "price",
  "pack",
  "mass",
  "modulus along",
  "modulus across",
  "size limit (mm)",
  "on hand",
  "PAT",
  "buffered",
  "permanence",
  "supplier",
  "item number",
  "quote date",
  "example price",
] as const;

/** Stock rows as a table of cells under {@link STOCK_HEADINGS}; what a row does not give is empty text. */
export function stockCells(stock: readonly StockRow[]): (number | string)[][] {
  return [
    [...STOCK_HEADINGS],
    ...stock.map((row) =>
      [
        row.stock,
        row.material,
        row.caliperAsGiven,
        row.sheetLength,
        row.sheetWidth,
        row.grain,
        row.price,
        row.pack,
        row.massGm2,
        row.modulusAlongGpa,
        row.modulusAcrossGpa,
        row.sizeLimit,
        row.onHand,
        yesOrNo(row.passesPat),
        yesOrNo(row.buffered),
        row.permanence === "none" ? "none" : row.permanence?.toUpperCase(),
        row.supplier,
        row.itemNumber,
        row.quoteDate,
        row.examplePrice ? "yes" : undefined,
      ].map((cell) => cell ?? ""),
    ),
  ];
}

function yesOrNo(known: boolean | undefined): string | undefined {
  return known === undefined ? undefined : known ? "yes" : "no";
}

/** Permanent and buffered; whether it passes the photographic activity test is the supplier's to say. */
function conservation(row: StockRow): StockRow {
  return { ...row, permanence: "a", buffered: true };
}

/** For photographs and for what an alkaline reserve would harm. */
function photoSafe(row: StockRow): StockRow {
  return { ...row, permanence: "a", buffered: false, passesPat: true };
}

/** Sold by the metre, as wide as it is used. */
function tape(stock: string, width: Mm, price: number): StockRow {
  return { ...sheet(stock, "closure", 0.5, 250, price), sheetLength: undefined, sheetWidth: width };
}

function card(stock: string, points: number, massGm2: number, price: number): StockRow {
  return { ...sheet(stock, "card", points * MM_PER_POINT, massGm2, price), caliperAsGiven: `${points} pt` };
}

function board(stock: string, caliper: number, price: number): StockRow {
  const kgPerM3 = 645;
  return sheet(stock, "board", caliper, Math.round(caliper * kgPerM3), price);
}

function sheet(
  stock: string,
  material: StockRow["material"],
  caliper: number,
  massGm2: number,
  price: number,
): StockRow {
  return {
    stock,
    material,
    caliper,
    caliperAsGiven: caliper,
    sheetLength: 1000,
    sheetWidth: 700,
    grain: "fixed",
    price,
    pack: 1,
    massGm2,
    modulusAlongGpa: undefined,
    modulusAcrossGpa: undefined,
    sizeLimit: undefined,
    onHand: undefined,
    passesPat: undefined,
    buffered: undefined,
    permanence: undefined,
    supplier: undefined,
    itemNumber: undefined,
    quoteDate: undefined,
    examplePrice: true,
  };
}
