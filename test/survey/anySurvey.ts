import { KINDS } from "../../src/enclosure/registry";
import fc from "fast-check";
import type { Cells } from "../filling/filledBook";

type Value = string | number | boolean | null;

/** A column that generated surveys may have. */
interface Column {
  readonly heading: string;
  readonly cell: fc.Arbitrary<Value>;
}

/** Common values first, each as often as its weight. */
const mostly = (...values: readonly (readonly [weight: number, ...values: readonly Value[]])[]): fc.Arbitrary<Value> =>
  fc.oneof(...values.map(([weight, ...some]) => ({ weight, arbitrary: fc.constantFrom(...some) })));

const number = (weight: number, least: number, most: number, decimals = 0) => ({
  weight,
  arbitrary: fc
    .integer({ min: least * 10 ** decimals, max: most * 10 ** decimals })
    .map((each): Value => each / 10 ** decimals),
});

const mmSize = (least: number, most: number) =>
  fc.oneof(
    number(12, least, most),
    number(3, least, most, 1),
    { weight: 3, arbitrary: fc.constantFrom<Value>("8 5/8 in", "24.5 cm", "180 mm", "212", "1' 2 1/2\"") },
    { weight: 1, arbitrary: fc.constantFrom<Value>(null, 0, "", " ", "21O", -5, 45_000, 6000, "1,234", "open") },
  );

const inSize = (least: number, most: number) =>
  fc.oneof(
    number(12, least, most, 2),
    { weight: 4, arbitrary: fc.constantFrom<Value>("8 5/8", "10 1/2", "9.25", "7 3/16 in", "200 mm", "3/4") },
    { weight: 1, arbitrary: fc.constantFrom<Value>(null, 0, " ", "8 5/0", -1, 300, 45_000) },
  );

const KIND = mostly(
  [10, ...KINDS.map(({ name }) => name)],
  [3, "drop-spine box", "Slip case", " Tray "],
  [2, "none", "None"],
  [2, null, "clamsell box"],
);

const QUANTITY: Column = { heading: "Quantity", cell: mostly([6, null, 1, 2, 6], [2, "3", 0], [1, 2.5, "two", -1]) };

const OWN: readonly Column[] = [
  { heading: "Fit", cell: mostly([6, null], [4, "snug", "loose", 2.5, "1/8 in"], [1, "tight", "default", "-"]) },
  { heading: "Cushion base", cell: mostly([6, null, 0], [3, 5, "6 mm", "none"], [1, "soft"]) },
  { heading: "Wall board", cell: mostly([6, null], [3, 2.5, "3 mm", "80 pt"], [1, 40, "thick"]) },
  { heading: "Construction", cell: mostly([8, null], [3, "on base", "Around Base"], [1, "nailed"]) },
  { heading: "Rests on", cell: mostly([6, null], [3, "foot", "edge"]) },
  { heading: "End cards", cell: mostly([6, null], [3, "yes", "no", true, false]) },
];

const WEIGHT: readonly Column[] = [
  { heading: "Weight (kg)", cell: mostly([6, 0.4, 1.2, 3.5], [3, null, "850 g", "2 lb"], [1, "heavy", -1]) },
  { heading: "Weight (g)", cell: mostly([6, 400, 1200, 3500], [3, null, "2 kg"], [1, "heavy"]) },
];

const HAZARD: Column = {
  heading: "Hazard",
  cell: mostly([6, null], [3, "mould", "fragile  glass"], [2, "no", "None", "-", 0, false], [2, 1, true, "red\nrot"]),
};

const DIMENSIONS = mostly(
  [8, "31.5 x 24 x 4.2 cm", "300 x 210 x 40 mm", "12 1/4 x 9 x 1 1/2 in", "H 14.8 cm, W 21.5 cm, D 1.9 cm"],
  [3, "23 x 18 x 6 cm, 1.2 kg", "310 x 205 x 38"],
  [2, null, "24 cm", "21 x 15 cm", "see file", 24],
);

interface Form {
  readonly name: string;
  readonly sizes: readonly Column[];
  readonly more?: readonly Column[];
  readonly settings?: readonly string[];
}

const three = (ending: string, size: (least: number, most: number) => fc.Arbitrary<Value>): readonly Column[] => [
  { heading: `Height${ending}`, cell: size(6, 40) },
  { heading: `Width${ending}`, cell: size(4, 30) },
  { heading: `Depth${ending}`, cell: size(1, 6) },
];
const mm = (ending: string): readonly Column[] => three(ending, (least, most) => mmSize(least * 10, most * 10));

/** Every form in which surveys come. */
export const FORMS: readonly Form[] = [
  { name: "millimetres", sizes: mm("") },
  { name: "millimetres, workbook in inches", sizes: mm(" (mm)"), settings: ["unit=in"] },
  { name: "inches", sizes: three("", inSize), settings: ["unit=in"] },
  { name: "inches in headings, workbook in mm", sizes: three(" (in)", inSize) },
  { name: "centimetres in headings, workbook in mm", sizes: three(" (cm)", inSize) },
  { name: "centimetres in headings, workbook in cm", sizes: three(" (cm)", inSize), settings: ["unit=cm"] },
  {
    name: "metres and feet in headings",
    sizes: [
      { heading: "Height (m)", cell: mostly([8, 0.3, 0.42, 1.1], [3, "0.35", "310 mm"], [1, null, 0, 6, "tall"]) },
      { heading: "Width (ft)", cell: mostly([8, 0.75, 1, 2], [3, "1 1/4", "9 in", "0.5"], [1, null, 0, 17, "wide"]) },
      { heading: "Depth (in)", cell: inSize(1, 6) },
    ],
  },
  {
    name: "a unit column",
    sizes: three("", inSize),
    more: [
      { heading: "Unit", cell: mostly([8, "in", "cm"], [3, "mm", "inches", "In.", null], [1, "furlong", "ft", "m"]) },
    ],
  },
  { name: "dimension texts", sizes: [{ heading: "Dimensions", cell: DIMENSIONS }] },
  { name: "dimension texts in cm", sizes: [{ heading: "Dimensions (cm)", cell: DIMENSIONS }], settings: ["unit=in"] },
  {
    name: "dimension texts width first, text unit set",
    sizes: [{ heading: "Dimensions W x H x D", cell: DIMENSIONS }],
    settings: ["text unit=cm"],
  },
  {
    name: "dimension texts beside sizes",
    sizes: [
      ...three("", (least, most) =>
        fc.oneof(
          { weight: 2, arbitrary: fc.constant<Value>(null) },
          { weight: 1, arbitrary: mmSize(least * 10, most * 10) },
        ),
      ),
      { heading: "Dimensions", cell: DIMENSIONS },
    ],
  },
];

/** A survey of one form, with some of the columns that a survey may have. */
export function anySurvey(form: Form): fc.Arbitrary<Cells> {
  const { sizes, more = [] } = form;
  return fc
    .record({
      quantity: fc.boolean(),
      weight: fc.constantFrom(-1, -1, 0, 1),
      hazard: fc.boolean(),
      own: fc.subarray([...OWN], { maxLength: 3 }),
    })
    .chain(({ quantity, weight, hazard, own }) => {
      const columns: readonly Column[] = [
        { heading: "Title", cell: fc.constantFrom<Value>("Log", "Atlas", "=odd", null) },
        ...sizes,
        ...more,
        { heading: "Enclosure", cell: KIND },
        ...(quantity ? [QUANTITY] : []),
        ...(weight < 0 ? [] : [WEIGHT[weight]!]),
        ...(hazard ? [HAZARD] : []),
        ...own,
      ];
      const row = fc.tuple(...columns.map(({ cell }) => cell));
      return fc.array(row, { minLength: 12, maxLength: 16 }).map((rows): Cells => {
        const headings = ["Shelfmark", ...columns.map(({ heading }) => heading)];
        // First rows that show what each column is, so that no generated junk makes recognition ask.
        const plain = GOOD_ROWS.map((good) => columns.map(({ heading }) => good(heading, form)));
        return [headings, ...[...plain, ...rows].map((cells, index) => [`S ${index + 1}`, ...cells])];
      });
    });
}

/** Ordinary rows: enough for a column to be known by its cells, whatever is generated. */
const GOOD_ROWS: readonly ((heading: string, form: Form) => Value)[] = Array.from(
  { length: 20 },
  (_, i) => (heading) => {
    if (heading === "Enclosure") return ["tray", "lidded box", "slipcase", "clamshell box"][i % 4]!;
    if (heading === "Unit") return "in";
    if (heading.startsWith("Dimensions")) return "30 x 21 x 4 cm";
    if (heading.startsWith("Weight")) return heading.includes("(g)") ? 900 : 0.9;
    if (heading.startsWith("Height")) return heading.includes("(m)") ? 0.3 : 12 + i;
    if (heading.startsWith("Width")) return heading.includes("(ft)") ? 0.8 : 9 + i;
    if (heading.startsWith("Depth")) return 2;
    // Single words are settings only where their cells are.
    if (heading === "Fit") return "snug";
    if (heading === "Construction") return "on base";
    return heading === "Quantity" ? 2 : null;
  },
);
