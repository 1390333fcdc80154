import { OBJECTS, type SurveyObject } from "./objects";
import {
  type Cell,
  type MadeSurvey,
  line,
  cm,
  inches,
  grams,
  text,
  type Row,
  ALL,
  UNWEIGHED,
  type Layout,
  survey,
} from "./made";

const HEADINGS = ["Shelfmark", "Title", "Height (cm)", "Width (cm)", "Depth (cm)", "Weight (kg)", "Enclosure"];

const full: Row = ({ id, title, size, kg, kind }) => [id, title, ...size.map(cm), kg, kind];

const named = (ending: string) => [
  "Shelfmark",
  "Title",
  `Height${ending}`,
  `Width${ending}`,
  `Depth${ending}`,
  "Enclosure",
];

const sized =
  (scale: (mm: number) => number): Row =>
  ({ id, title, size, kind }) => [id, title, ...size.map(scale), kind];

const only = (headings: string, row: Row, more: Partial<Layout> = {}): Layout => ({
  headings: headings.split("|"),
  row,
  ...more,
});

const FIRST = OBJECTS[0]!;

const withCell =
  (row: Row, column: number, cell: (object: SurveyObject, index: number) => Cell): Row =>
  (object, index) =>
    row(object, index).map((each, i) => (i === column ? cell(object, index) : each));

/** Layouts that need more than their words. */
export const hard: readonly MadeSurvey[] = [
  survey("no unit, centimetres", "English", true, {
    headings: named(""),
    row: sized(cm),
    expected: UNWEIGHED,
    answers: ["--unit cm"],
  }),
  survey("no unit, inches", "English", true, {
    headings: named(""),
    row: sized(inches),
    expected: UNWEIGHED,
    answers: ["--unit in"],
    writer: "csv",
  }),
  survey("a title names the unit", "English", true, {
    above: [["Housing survey, all measurements in inches"], []],
    headings: named(""),
    row: sized(inches),
    expected: UNWEIGHED,
  }),
  survey("a German title names the unit", "German", true, {
    above: [["Verpackungsplan (alle Maße in cm)"], []],
    headings: ["Signatur", "Titel", "Höhe", "Breite", "Tiefe", "Verpackung"],
    row: sized(cm),
    expected: UNWEIGHED,
    writer: "xml",
  }),
  survey(
    "plain texts among texts with a unit",
    "English",
    true,
    only(
      "Shelfmark|Dimensions|Enclosure",
      (each, i) => [each.id, i % 3 === 0 ? text(each) : `${text(each)} cm`, each.kind],
      { expected: UNWEIGHED },
    ),
  ),
  survey("weights in grams that say nothing", "English", true, {
    headings: ["Shelfmark", "Title", "Height (cm)", "Width (cm)", "Depth (cm)", "Weight", "Enclosure"],
    row: withCell(full, 5, ({ kg }) => grams(kg)),
    answers: ["--unit Weight=g"],
  }),
  survey("decimal commas and a point before thousands", "German", true, {
    headings: ["Signatur", "Titel", "Höhe (mm)", "Breite (mm)", "Tiefe (mm)", "Verpackung"],
    row: ({ id, title, size, kind }, i) => [
      id,
      title,
      i === 9 ? "1.250" : `${size[0]},0`,
      `${size[1]},0`,
      `${size[2]},0`,
      kind,
    ],
    writer: "csv",
    answers: ["--decimals comma"],
    expected: OBJECTS.map((each, i) =>
      line(each, { kg: undefined, ...(i === 9 ? { size: [1250, each.size[1], each.size[2]] } : {}) }),
    ),
  }),
  survey("a condition survey", "English", true, {
    headings: [...HEADINGS, "Construction", "Joint", "Lining", "Fold"],
    row: (each, i) => [...full(each, i), "sewn on cords", i % 2 ? "cracked" : "sound", "marbled paper", "torn"],
    said: "is left alone",
  }),
  survey("a word that could be two kinds", "English", true, {
    headings: HEADINGS,
    row: withCell(full, 6, ({ kind }) => (kind === "clamshell box" ? "Box" : kind)),
    answers: ['--word "Box=clamshell box"'],
  }),
  survey("boîte could be two kinds", "French", true, {
    headings: ["Cote", "Titre", "Hauteur (cm)", "Largeur (cm)", "Épaisseur (cm)", "Poids (kg)", "Conditionnement"],
    row: withCell(full, 6, ({ kind }) => (kind === "lidded box" ? "boîte" : kind)),
    answers: ['--word "boîte=lidded box"'],
    writer: "csv",
  }),
  survey("a column for each kind, ticked", "English", true, {
    headings: [...HEADINGS.slice(0, 6), "Phase box", "Clamshell", "Slip case", "Box with lid"],
    row: (each, i) => [
      ...full(each, i).slice(0, 6),
      ...(["four-flap wrapper", "clamshell box", "slipcase", "lidded box"] as const).map((kind) =>
        each.kind === kind ? "x" : null,
      ),
    ],
    answers: ["--ticks"],
  }),
  survey("yes and no", "English", true, {
    headings: [...HEADINGS.slice(0, 6), "Enclosure needed?"],
    row: withCell(full, 6, (_, i) => (i % 4 === 3 ? "no" : "yes")),
    answers: ['--enclosure "Enclosure needed?" --word "yes=clamshell box"'],
    expected: OBJECTS.map((each, i) => (i % 4 === 3 ? `${each.id}: nothing` : line(each, { kind: "clamshell box" }))),
  }),
  survey("no column for the enclosure", "English", true, {
    headings: HEADINGS.slice(0, 6),
    row: (each, i) => full(each, i).slice(0, 6),
    answers: ['--all "clamshell box"'],
    expected: OBJECTS.map((each) => line(each, { kind: "clamshell box" })),
  }),
  survey("an enclosure under another heading", "English", true, {
    headings: [...HEADINGS.slice(0, 6), "Action"],
    row: full,
    answers: ["--enclosure Action"],
  }),
  survey("no headings", "English", true, {
    headings: [],
    row: ({ id, size, kind }) => [id, ...size, kind],
    writer: "csv",
    answers: ["--no-headings --height B --width C --depth D", "--enclosure E"],
    expected: OBJECTS.map((each, i) => line(each, { id: `row ${i + 1}`, kg: undefined })),
  }),
  survey("two rows of headings", "English", true, {
    above: [["Shelfmark", "Title", "Dimensions (mm)", null, null, "Enclosure"]],
    headings: ["", "", "H", "W", "D", ""],
    row: sized((mm) => mm),
    expected: UNWEIGHED,
  }),
  survey("units below the headings", "Swedish", true, {
    headings: ["Signum", "Titel", "Höjd", "Bredd", "Djup", "Vikt", "Förpackning"],
    units: [null, null, "cm", "cm", "cm", "kg", null],
    row: full,
  }),
  survey("years as sheets, all of them", "English", true, {
    headings: HEADINGS,
    row: full,
    sheet: "2023",
    more: [{ name: "2024", rows: [HEADINGS, ["B 1", "Sermons", 30, 21, 4, 1.6, "slipcase"]] }],
    answers: ["--sheet all"],
    expected: [...ALL, line(FIRST, { id: "B 1", kind: "slipcase" })],
  }),
  survey("years as sheets, one of them", "English", true, {
    headings: HEADINGS,
    row: full,
    sheet: "2023",
    more: [{ name: "2024", rows: [HEADINGS, ["B 1", "Sermons", 30, 21, 4, 1.6, "slipcase"]] }],
    answers: ["--sheet 2023"],
  }),
  survey("length beside height, width and depth", "English", true, {
    headings: ["Shelfmark", "Length (cm)", "Width (cm)", "Height (cm)", "Depth (cm)", "Enclosure"],
    row: ({ id, size, kind }) => [id, 99, cm(size[1]), cm(size[0]), cm(size[2]), kind],
    answers: ['--not "Length (cm)"'],
    expected: UNWEIGHED,
  }),
  survey("headings again, subtotals and totals", "English", true, {
    headings: HEADINGS,
    row: full,
    below: [
      ["Subtotal", null, 334, 237.5, 45.9, 19.35, null],
      HEADINGS,
      ["B 1", "Sermons", 30, 21, 4, 1.6, "slipcase"],
      ["Total", null, 364, 258, 50, 21, null],
    ],
    expected: [
      ...ALL,
      "Subtotal: left out",
      "Shelfmark: left out",
      line(FIRST, { id: "B 1", kind: "slipcase" }),
      "Total: left out",
    ],
  }),
  survey("an enclosure without measures, and zeros", "English", true, {
    headings: HEADINGS,
    row: full,
    below: [
      ["B 1", "Lost", null, null, null, null, "slipcase"],
      ["B 2", "Found", 0, 0, 0, 0, "slipcase"],
    ],
    expected: [...ALL, "B 1: problem height", "B 2: problem height"],
  }),
  survey("identifiers with zeros in front", "English", true, {
    headings: HEADINGS,
    row: withCell(full, 0, (_, i) => 42 + i),
    formats: { 1: "000000" },
    expected: OBJECTS.map((each, i) => line(each, { id: String(42 + i).padStart(6, "0") })),
  }),
  survey("a shelfmark that was taken for a date", "English", true, {
    headings: HEADINGS,
    row: withCell(full, 0, ({ id }, i) => (i === 2 ? { date: "2024-03-12", format: "d-mmm" } : id)),
    expected: OBJECTS.map((each, i) => line(each, i === 2 ? { id: "12-Mar" } : {})),
  }),
  survey("a doubled identifier", "English", true, {
    headings: HEADINGS,
    row: withCell(full, 0, ({ id }, i) => (i === 4 ? "A 1" : id)),
    expected: OBJECTS.map((each, i) => line(each, i === 4 ? { id: "A 1" } : {})),
    said: 'identifier "A 1" is in rows 2, 6',
  }),
  survey(
    "H 30; W 21; Th 4",
    "English",
    true,
    only(
      "Item no.|Size (cm)|Housing",
      ({ id, size, kind }) => [id, `H ${cm(size[0])}; W ${cm(size[1])}; Th ${cm(size[2])}`, kind],
      { expected: UNWEIGHED, writer: "write-excel-file" },
    ),
  ),
  survey(
    "sizes in brackets",
    "English",
    true,
    only("Item no.|Size (cm)|Housing", (each) => [each.id, `(${text(each)})`, each.kind], {
      expected: UNWEIGHED,
      writer: "xml",
    }),
  ),
  survey(
    "pounds and ounces, inches in texts",
    "English",
    true,
    only(
      "Item no.|Size|Weight|Housing",
      ({ id, size, kind }) => [id, `${size.map(inches).join(" x ")} in`, "1 lb 4 oz", kind],
      { expected: OBJECTS.map((each) => line(each, { kg: 0.567 })) },
    ),
  ),
  survey("a number format names the unit", "English", true, {
    headings: named(""),
    row: sized(cm),
    formats: { 3: '0.0" cm"', 4: '0.0" cm"', 5: '0.0" cm"' },
    expected: UNWEIGHED,
  }),
  survey("one height in other units", "English", true, {
    headings: HEADINGS,
    row: withCell(full, 2, ({ size }, i) => (i === 7 ? size[0] : cm(size[0]))),
    answers: ["--odd leave-out"],
    expected: OBJECTS.map((each, i) => (i === 7 ? `${each.id}: left out` : line(each))),
  }),
  survey("a thickness column in another unit than it says", "English", true, {
    headings: HEADINGS,
    row: withCell(full, 4, ({ size }) => size[2]),
    answers: ['--unit "Depth (cm)=mm"'],
  }),
  survey("misspelt kinds, and none in many words", "English", true, {
    headings: HEADINGS,
    row: withCell(full, 6, ({ kind }, i) => ["clamshel box", "n/a", "-", "ok as is", "No box"][i] ?? kind),
    expected: OBJECTS.map((each, i) => (i === 0 ? line(each) : i < 5 ? `${each.id}: nothing` : line(each))),
    said: "read as clamshell box",
  }),
  survey("a number of a box that holds nothing shared", "English", true, {
    headings: [...HEADINGS, "Box no."],
    row: (each, i) => [...full(each, i), i + 1],
    answers: ['--not "Box no."'],
  }),
  survey("columns that are called nothing known", "English", true, {
    headings: ["Shelfmark", "Alpha", "Beta", "Gamma", "Enclosure"],
    row: ({ id, size, kind }) => [id, ...size, kind],
    answers: ["--height Alpha --width Beta --depth Gamma"],
    expected: UNWEIGHED,
  }),
  survey(
    "height and width in one column",
    "English",
    true,
    only(
      "Shelfmark|H x W (cm)|Thickness (cm)|Enclosure",
      ({ id, size, kind }) => [id, `${cm(size[0])} x ${cm(size[1])}`, cm(size[2]), kind],
      { expected: UNWEIGHED },
    ),
  ),
  survey("answers that the workbook remembers", "English", true, {
    headings: ["Shelfmark", "Title", "Tall", "Broad", "Fat", "Kind"],
    row: withCell(sized(cm), 5, ({ kind }) => (kind === "lidded box" ? "the usual" : kind)),
    more: [
      {
        name: "words",
        rows: [
          ["heading or value", "meaning", "unit", "sheet"],
          ["Tall", "height", "cm", "Survey"],
          ["Broad", "width", "cm", "Survey"],
          ["Fat", "depth", "cm", "Survey"],
          ["Kind", "enclosure", null, null],
          ["the usual", "lidded box", null, null],
        ],
      },
    ],
    expected: UNWEIGHED,
  }),
  survey(
    "the diameter and thickness of round objects",
    "English",
    true,
    only(
      "Shelfmark|Diameter (mm)|Thickness (mm)|Weight (kg)|Enclosure",
      ({ id, size, kg, kind }) => [id, size[0], size[2], kg, kind],
      { expected: OBJECTS.map((each) => line(each, { size: [each.size[0], each.size[0], each.size[2]] })) },
    ),
  ),
  survey(
    "height and width in one column, and a heading that does not say thickness",
    "English",
    true,
    only(
      "Shelfmark|H x W (cm)|Block mm|Enclosure",
      ({ id, size, kind }) => [id, `${cm(size[0])} x ${cm(size[1])}`, size[2], kind],
      { expected: UNWEIGHED, answers: ['--depth "Block mm"'] },
    ),
  ),
  survey(
    "length, width and height of objects that lie",
    "English",
    true,
    only("Shelfmark|L|W|H|Enclosure", ({ id, size, kind }) => [id, ...size, kind], {
      expected: UNWEIGHED,
      answers: ["--height B --depth D"],
    }),
  ),
  survey(
    "kinds under a heading that could be a shared box",
    "English",
    true,
    only("Shelfmark|Height mm|Width mm|Depth mm|Box", ({ id, size, kind }) => [id, ...size, kind], {
      expected: UNWEIGHED,
    }),
  ),
  survey(
    "an order whose last word is a unit elsewhere",
    "Polish",
    true,
    only(
      "Sygnatura|Wymiary: wys. x szer. x gr. [cm]|Waga [kg]|Opakowanie",
      ({ id, size, kg, kind }) => [id, size.map((mm) => String(cm(mm)).replace(".", ",")).join(" x "), kg, kind],
      { writer: "xml" },
    ),
  ),
  survey(
    "the word for each direction beside its number",
    "French",
    true,
    only(
      "Cote|Dimensions|Poids (kg)|Conditionnement",
      ({ id, size, kg, kind }) => [
        id,
        `H. ${cm(size[0])} ; L. ${cm(size[1])} ; Ép. ${cm(size[2])} cm`
          .replaceAll(".", ",")
          .replace(/([HLp]),/g, "$1."),
        kg,
        kind,
      ],
      { writer: "csv" },
    ),
  ),
];
