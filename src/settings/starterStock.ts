import type { StockRow } from "./stock";

/**
 * The starter stock table, to copy and edit: names, prices and sheet sizes are invented; calipers are usual ones.
 * Board mass: 645 kg/m3, the density of a greyboard of 1290 g/m2 at 2.0 mm (bulk after ISO 534); the rest from memory.
 */
export const STARTER_STOCK: readonly StockRow[] = [
  board("grey board 1.5", 1.5, 2.4),
  board("grey board 2", 2, 3.1),
  board("grey board 2.5", 2.5, 3.9),
  board("grey board 3", 3, 4.7),
  sheet("folding card 0.4", "card", 0.4, 300, 1.1),
  sheet("folding card 0.6", "card", 0.6, 450, 1.6),
  { ...sheet("book cloth", "covering", 0.3, 240, 14), sheetLength: undefined, sheetWidth: 1000 },
  sheet("lining paper", "lining", 0.15, 120, 0.9),
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
] as const;

/** Stock rows as a table of cells under {@link STOCK_HEADINGS}; what a row does not give is empty text. */
export function stockCells(stock: readonly StockRow[]): (number | string)[][] {
  return [
    [...STOCK_HEADINGS],
    ...stock.map((row) =>
      [
        row.stock,
        row.material,
        row.caliper,
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
      ].map((cell) => cell ?? ""),
    ),
  ];
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
  };
}
