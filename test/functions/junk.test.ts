import fc from "fast-check";
import { DEFINITIONS } from "../../src/settings/schema";
import { KINDS } from "../../src/enclosure/registry";
import type { Argument, Cell } from "../runtime/marshal";
import { excel } from "./cell";

/** Cells such as people leave in a survey, and such as nobody would. */
const junkCell: fc.Arbitrary<Cell> = fc.oneof(
  fc.constantFrom<Cell>(0, "", null, true, false, -1, 1e9, 1e308, 5e-324, 1e-310, 45234, 5000, 5000.0001, 20000),
  fc.constantFrom<Cell>({ error: "#N/A" }, { error: "#REF!" }, { error: "#DIV/0!" }),
  fc.constantFrom("none", "NaN", "Infinity", "-Infinity", "1e400", "0x20", "1,234", "10 3/8", "1/0", "3/8", "2 pt"),
  fc.constantFrom("=", ";", "fit=", "all", "setting", "value", "stock", "material", "__proto__", "constructor"),
  fc.constantFrom("𝟙𝟚", "½ m", "1\u00a0000", "30 x 20 x 4 cm", "\u202e40", "9".repeat(400), `${"(".repeat(300)} `),
  fc.double(),
  fc.integer({ min: -10, max: 6000 }),
  fc.string({ maxLength: 12 }),
);

const measure = fc.oneof(
  { weight: 6, arbitrary: fc.double({ min: 0.01, max: 4000, noNaN: true }) },
  { weight: 1, arbitrary: junkCell },
);
const enclosure = fc.oneof(
  { weight: 6, arbitrary: fc.constantFrom<Cell>(...KINDS.flatMap(({ name, otherNames }) => [name, ...otherNames])) },
  { weight: 1, arbitrary: junkCell },
);
const WORDS = [
  ...[
    "all",
    "height",
    "width",
    "depth",
    "weight",
    "along",
    "across",
    "length",
    "count",
    "folds",
    "names",
    "conservation board 2",
  ],
  ...KINDS.flatMap(({ parts, coverings, trays }) => [
    ...parts,
    ...coverings,
    ...trays.map((tray) => `${tray} side wall`),
  ]),
];

const settingName = fc.constantFrom(...Object.values(DEFINITIONS).map(({ name }) => name));
const settingValue: fc.Arbitrary<Cell> = fc.oneof(
  fc.constantFrom<Cell>(
    "none",
    "yes",
    "no",
    "auto",
    "full",
    "snug",
    "on base",
    "flanged base",
    "head",
    "crease",
    "foot",
  ),
  fc.constantFrom<Cell>(1, 2, "in", "cm", "one piece", "1 / 1", "0.3 / 0.2", "20 m", "0.3", "10", "0.01", 1e-7, 4999),
  fc.double({ min: 0, max: 50, noNaN: true }),
  junkCell,
);
const settingsText = fc
  .array(fc.tuple(settingName, settingValue), { minLength: 1, maxLength: 3 })
  .map((pairs) => pairs.map(([name, value]) => `${name}=${String(value)}`).join("; "));
const settingsRange = fc
  .array(fc.tuple(settingName, settingValue), { minLength: 1, maxLength: 4 })
  .map((rows): Argument => [["setting", "value"], ...rows]);
const stockTable = fc
  .array(
    fc.tuple(
      fc.oneof(fc.constantFrom<Cell>("grey", "card", "cloth"), junkCell),
      fc.oneof(fc.constantFrom<Cell>("board", "card", "covering", "lining", "cushion"), junkCell),
      fc.oneof(fc.constantFrom<Cell>(2, 0.4, 80, ""), junkCell),
      fc.oneof(fc.constantFrom<Cell>(25.1, 40, 1000, ""), junkCell),
    ),
    { minLength: 1, maxLength: 3 },
  )
  .map((rows): Argument => [["stock", "material", "caliper", "sheet length"], ...rows]);
const junkRange: fc.Arbitrary<Argument> = fc
  .tuple(fc.integer({ min: 1, max: 3 }), fc.integer({ min: 1, max: 4 }))
  .chain(([rows, columns]) =>
    fc.array(fc.array(junkCell, { minLength: columns, maxLength: columns }), { minLength: rows, maxLength: rows }),
  );
const settings: fc.Arbitrary<readonly Argument[]> = fc.array(
  fc.oneof(
    { weight: 4, arbitrary: settingsText },
    { weight: 4, arbitrary: settingsRange },
    { weight: 2, arbitrary: stockTable },
    { weight: 1, arbitrary: junkRange },
    { weight: 1, arbitrary: junkCell },
  ),
  { maxLength: 2 },
);
const selector: fc.Arbitrary<Argument> = fc.oneof(
  { weight: 8, arbitrary: fc.constantFrom<Argument>(...WORDS) },
  { weight: 1, arbitrary: junkCell },
  { weight: 1, arbitrary: junkRange },
);

const MEASURES = ["height", "width", "depth", "weight"];
/** Functions of one item or of no item: a whole survey has its own suite. */
const FUNCTIONS = excel.metadata.functions.filter(({ parameters }) => parameters[0]?.name !== "items");

const call = fc.constantFrom(...FUNCTIONS).chain(({ id, parameters }) =>
  fc
    .tuple(
      ...parameters
        .filter((parameter) => parameter.repeating !== true)
        .map(({ name, dimensionality }): fc.Arbitrary<Argument> => {
          if (name === "enclosure") return enclosure;
          if (MEASURES.includes(name)) return measure;
          return dimensionality === "matrix" ? selector : junkCell;
        }),
    )
    .chain((args) =>
      (parameters.at(-1)?.repeating === true ? settings : fc.constant([])).map(
        (given) => [id, [...args, ...given]] as const,
      ),
    ),
);

/** What the code let slip into words; texts of the user, which messages quote, aside. */
const SLIP = /\b(NaN|Infinity|undefined|null)\b|\[object/;
const hasSlip = (text: string): boolean => SLIP.test(text.replace(/"[^"]*"/gs, ""));

/** Refused with a reason. A plain Error of the code would reach the cell as #VALUE! without a message. */
const isRefusal = (answer: unknown): boolean =>
  typeof answer === "object" &&
  answer !== null &&
  "error" in answer &&
  ["#VALUE!", "#N/A"].includes(String(answer.error)) &&
  "message" in answer &&
  /^.+: .+$/s.test(String(answer.message)) &&
  !hasSlip(String(answer.message));

/** NaN and Infinity cross to Excel as null. A text of the call itself, such as a currency, may be anything. */
const isFigure = (value: unknown, called: unknown): boolean =>
  typeof value === "string" ? !hasSlip(value) || JSON.stringify(called).includes(value) : Number.isFinite(value);

const BATCH = 40;
const RUNS = 250;

test(`${BATCH * RUNS} generated calls: every cell is a text, a finite number or a reasoned refusal`, async () => {
  const seen = { answered: 0, refused: 0 };
  await fc.assert(
    fc.asyncProperty(fc.array(call, { minLength: BATCH, maxLength: BATCH }), async (calls) => {
      const answers = await excel.callMany(calls);
      answers.forEach((answer, index) => {
        const cells = "error" in answer ? [answer] : [answer.value].flat(2);
        if ("error" in answer) seen.refused += 1;
        else seen.answered += 1;
        const wrong = cells.filter((each) => !isRefusal(each) && !isFigure(each, calls[index]));
        if (wrong.length > 0) throw new Error(`${JSON.stringify(calls[index])} answered ${JSON.stringify(wrong)}`);
      });
    }),
    { numRuns: RUNS, endOnFailure: true },
  );
  // The junk reaches past the first argument: a fair part of it is answered, a fair part refused.
  expect(seen.answered).toBeGreaterThan((BATCH * RUNS) / 10);
  expect(seen.refused).toBeGreaterThan((BATCH * RUNS) / 10);
});

test(
  // A pattern whose steps double with each character would never end on these.
  "the longest text that a cell can hold is refused, wherever it is",
  async () => {
    const LONGEST_CELL = 32767;
    const texts = ["9", "1 ", "(", "( ", "fit=", "x", "' ", "10 3/8 "].map((piece) =>
      piece.repeat(LONGEST_CELL / piece.length).slice(0, LONGEST_CELL),
    );
    const calls = texts.flatMap((text) => [
      ["INSIDE", [text, 210, 40, "tray", "all"]] as const,
      ["INSIDE", [300, 210, 40, text, "all"]] as const,
      ["PART", [300, 210, 40, "tray", text.replaceAll("=", " "), "length"]] as const,
      ["INSIDE", [300, 210, 40, "tray", "all", [["fit", text]]]] as const,
      [
        "INSIDE",
        [
          300,
          210,
          40,
          "tray",
          "all",
          [
            [text, "material", "caliper"],
            ["a", "board", 2],
          ],
        ],
      ] as const,
      ["INSIDE", [300, 210, 40, "tray", "all", text]] as const,
      ["DIMENSIONS", [text, "all"]] as const,
    ]);
    const answers = await excel.callMany(calls);
    answers.forEach((answer) => expect(isRefusal(answer)).toBe(true));
  },
);
