/** What a column of a survey can be. `length` is settled into one of the three directions, or asked about. */
export type Field =
  | "identifier"
  | "title"
  | "height"
  | "width"
  | "depth"
  | "length"
  | "dimensions"
  | "weight"
  | "unit"
  | "enclosure"
  | "quantity"
  | "box"
  | "priority"
  | "batch"
  | "hazard";

/**
 * How sure a heading is. `letter` is a single letter that needs company (H beside W); `maybe` is never taken unasked.
 */
export type Strength = "sure" | "letter" | "maybe";

export interface HeadingReading {
  readonly field: Field;
  readonly strength: Strength;
  /** Among several headings for one label, the lower rank wins: an accession number over a bare number. */
  readonly rank: number;
}

/** A heading taken apart: its words without unit and brackets, the units it names, the order of a dimension text. */
export interface Heading {
  readonly text: string;
  readonly words: string;
  readonly units: readonly string[];
  /** `HWD`, as letters of height, width, depth (thickness is D) and length. */
  readonly order?: string;
  /** It has a remark in brackets that is neither a unit nor harmless: `Height (open)`. */
  readonly remark: boolean;
  /** It asks a question: `Enclosure needed?` holds yes and no. */
  readonly question: boolean;
}

/**
 * The one table of heading words. English and the usual abbreviations, in lower case, without points and brackets.
 * Each list within a field is a rank: the first wins over the second. Common practice, no source.
 */
const WORDS: Readonly<Record<Field, readonly (readonly string[])[]>> = {
  identifier: [
    list(
      "identifier, object id, object number, object no, object nr, obj no, obj id, item number, item no, item id, accession, " +
        "accession number, accession no, acc no, acc number, acc nr, accn no, call number, call no, callnumber, call num, call nr, " +
        "call mark, shelfmark, shelf mark, pressmark, inventory number, inventory no, inventory nr, inv no, inv nr, inv number, " +
        "catalogue number, catalogue no, catalog number, catalog no, cat no, cat number, museum number, museum no, " +
        "registration number, registration no, reg no, collection number, collection no, signature",
    ),
    list(
      "id, uid, barcode, bar code, record number, record no, record id, reference, ref, ref no, reference no, reference number",
    ),
    list("no, nr, number, num, #, sl no, s no, serial no, row, row no"),
  ],
  title: [
    list(
      "title, short title, book title, item title, object title, title of work, title description, author title, title author",
    ),
    list("object name, item name, name, object, item"),
    list("description, object description, item description, desc"),
  ],
  height: [list("height, ht, hgt, hght, hgth, heigth, h")],
  width: [list("width, wd, wdt, wdth, wth, breadth, w")],
  depth: [list("depth, dpth, dp, dpt, thickness, thick, thk, thkness, thck, th, d, t")],
  length: [list("length, len, lgth, lnth, lth, l")],
  dimensions: [list("dimensions, dimension, dims, dim, size, sizes, measurements, measurement, measures, meas")],
  weight: [list("weight, wt, wgt, wght, mass")],
  unit: [
    list("unit, units, uom, unit of measure, unit of measurement, units of measure, measurement unit, dimension unit"),
  ],
  enclosure: [
    list(
      "enclosure, enclosures, enclosure type, type of enclosure, housing, housing type, type of housing, box type, type of box",
    ),
    list(
      "recommended enclosure, recommended housing, proposed enclosure, proposed housing, new enclosure, new housing, " +
        "enclosure recommended, housing recommended, enclosure proposed, housing proposed, planned enclosure, planned housing",
    ),
  ],
  quantity: [list("quantity, qty, copies, no of copies, number of copies, no of items, number of items, item count")],
  box: [list("box, shared box, box group, boxed with, boxed together")],
  priority: [list("priority, prio, priority rating, priority level, treatment priority, conservation priority")],
  batch: [list("batch, batch no, batch number, batch id")],
  hazard: [list("hazard, hazards, hazardous, hazard note, hazard notes, hazardous materials")],
};

/** Headings that look like a field, but mean another thing often enough to ask. */
const MAYBE: Readonly<Partial<Record<Field, readonly string[]>>> = {
  enclosure: list(
    "current housing, current enclosure, existing housing, existing enclosure, present housing, old housing, enclosure needed, " +
      "housing needed, needs enclosure, needs box, box needed, enclosure y n, container, container type",
  ),
  box: list("box no, box number, box nr, box id"),
  quantity: list("count, no of pieces, pieces, number of pieces, volumes, vols, no of volumes, number of volumes"),
  weight: list("g, kg, lb, lbs, oz"),
  depth: list("diameter, diam, dia, ø"),
  dimensions: list("format"),
};

/** Words before or after a measure that change nothing: `max height`, `height overall`. */
const HARMLESS: ReadonlySet<string> = new Set(
  list(
    "object, item, book, volume, artefact, artifact, overall, max, maximum, approx, approximate, closed, measured, actual, total, the, of",
  ),
);

/** Fields that are measured: a longer heading with one of their words may be another measure, so it is asked about. */
const MEASURED: readonly Field[] = ["height", "width", "depth", "length", "weight", "dimensions"];
const LONGEST_MEASURE = 5;

/** Unit words under the name by which measures are read. */
const UNITS: ReadonlyMap<string, string> = new Map(
  Object.entries({
    mm: "mm, mms, millimetre, millimetres, millimeter, millimeters",
    cm: "cm, cms, centimetre, centimetres, centimeter, centimeters",
    m: "m, metre, metres, meter, meters",
    in: "in, ins, inch, inches, \", ″, ′′, ''",
    ft: "ft, foot, feet, ', ′",
    g: "g, gr, gm, gms, gram, grams, gramme, grammes",
    kg: "kg, kgs, kilo, kilos, kilogram, kilograms",
    lb: "lb, lbs, pound, pounds",
    oz: "oz, ounce, ounces",
  }).flatMap(([unit, words]) => list(words).map((word) => [word, unit] as const)),
);

/** Units of mass; the others are of length. */
export const MASS_UNITS: ReadonlySet<string> = new Set(["g", "kg", "lb", "oz"]);

/** The unit that a word names; undefined when it is none. */
export function unitWord(word: string): string | undefined {
  const bare = word.trim().toLowerCase().replace(/\.$/, "");
  return UNITS.get(bare);
}

/** Takes a heading apart. */
export function readHeading(value: unknown): Heading {
  const text = typeof value === "string" ? plainHeading(value) : "";
  const spaced = text.replace(/_/g, " ").replace(/(?<=\p{Ll}{2})(?=\p{Lu})/gu, " ");
  const units: string[] = [];
  const orders: string[] = [];
  let remark = false;
  const open = spaced.replace(/[([{]([^)\]}]*)[)\]}]/g, (_, inside: string) => {
    const left = takeUnits(inside, units);
    const order = readOrder(left);
    if (order !== undefined) orders.push(order);
    else if (!left.split(" ").every((word) => word === "" || HARMLESS.has(word.toLowerCase().replace(/\.$/, ""))))
      remark = true;
    return " ";
  });
  const bare = takeTrailingUnit(open.replace(/[*:†]+\s*$/, "").trim(), units);
  const { rest, order } = takeOrder(bare);
  if (order !== undefined) orders.unshift(order);
  return {
    text,
    words: wordsOf(rest) || (orders.length > 0 ? "dimensions" : ""),
    units: [...new Set(units)],
    ...(orders[0] === undefined ? {} : { order: orders[0] }),
    remark,
    question: /\?/.test(text),
  };
}

/** Letters of a heading that are looked at: twice what Excel takes for the heading of a table. */
const LONGEST_HEADING = 500;

function plainHeading(value: string): string {
  const plain = value.slice(0, LONGEST_HEADING).normalize("NFKC").slice(0, LONGEST_HEADING);
  return plain.replace(/\s+/g, " ").trim();
}

/** What a heading can mean; nothing when it is no field. */
export function headingReadings(heading: Heading): readonly HeadingReading[] {
  const { words } = heading;
  if (words === "") return [];
  const exact = exactReadings(words).map((reading) => doubted(reading, heading));
  if (exact.length > 0) return exact;
  const kept = words
    .split(" ")
    .filter((word) => !HARMLESS.has(word))
    .join(" ");
  const plain = exactReadings(kept)
    .filter(({ field }) => MEASURED.includes(field))
    .map((reading) => doubted(reading, heading));
  if (plain.length > 0) return plain;
  return containedReadings(words);
}

/** Words of a text that is compared with a heading: lower case, no points, single spaces. */
export function wordsOf(text: string): string {
  return text
    .slice(0, LONGEST_HEADING)
    .normalize("NFKC")
    .toLowerCase()
    .replace(/[.'’`]/g, "")
    .replace(/(\p{L})\s*#/gu, "$1 no")
    .replace(/[^\p{L}\p{N}#]+/gu, " ")
    .trim();
}

function exactReadings(words: string): HeadingReading[] {
  const found: HeadingReading[] = [];
  for (const [field, ranks] of Object.entries(WORDS) as [Field, readonly (readonly string[])[]][]) {
    ranks.forEach((list, rank) => {
      if (list.includes(words))
        found.push({ field, strength: words.length === 1 && words !== "#" ? "letter" : "sure", rank });
    });
    if (MAYBE[field]?.includes(words)) found.push({ field, strength: "maybe", rank: ranks.length });
  }
  return found;
}

/** A remark, a question, two units at once, or a unit of the wrong kind leaves a doubt. */
function doubted(reading: HeadingReading, { units, remark, question, words }: Heading): HeadingReading {
  const mass = units.some((unit) => MASS_UNITS.has(unit));
  const length = units.some((unit) => !MASS_UNITS.has(unit));
  if (reading.field === "width" && words === "w" && mass && !length)
    return { field: "weight", strength: "sure", rank: 0 };
  const measured = MEASURED.includes(reading.field);
  const wrongKind = measured && (reading.field === "weight" ? length : mass && reading.field !== "dimensions");
  const twoUnits = measured && units.filter((unit) => !MASS_UNITS.has(unit)).length > 1;
  const doubt = (measured && remark) || (question && reading.field === "enclosure") || wrongKind || twoUnits;
  return doubt ? { ...reading, strength: "maybe" } : reading;
}

function containedReadings(words: string): HeadingReading[] {
  const list = words.split(" ");
  if (list.length > LONGEST_MEASURE) return [];
  return MEASURED.filter((field) =>
    WORDS[field].some((rank) => rank.some((word) => word.length > 1 && list.includes(word))),
  ).map((field) => ({
    field,
    strength: "maybe",
    rank: 1,
  }));
}

/** The text in brackets without its unit words. */
function takeUnits(inside: string, units: string[]): string {
  const trimmed = inside.trim();
  const direct = unitWord(trimmed);
  if (direct !== undefined) {
    units.push(direct);
    return "";
  }
  const kept = trimmed.split(/[\s,;/]+|\bor\b|\band\b/).filter((word) => {
    const unit = unitWord(word);
    if (unit !== undefined) units.push(unit);
    return unit === undefined && word !== "";
  });
  return kept.join(" ");
}

/** A heading with more units than this is none of a measure. */
const MOST_UNITS = 8;

/** `Height cm`, `Weight, g`, `H/mm`, `Ht. in.`, `Height in mm`, `H"`, `Hmm`. */
function takeTrailingUnit(text: string, units: string[]): string {
  if (units.length >= MOST_UNITS) return text;
  const glued = /^([hwdtl])(mm|cm)$/i.exec(text);
  const marked = /^(.*[\p{L}.])\s*("|″|'')$/u.exec(text);
  const match = glued ?? marked ?? /^(.+?)(?:\s*[,;:/|]\s*|\s+-\s*|-(?!in\b)|\s+)(\p{L}+\.?)$/iu.exec(text);
  const unit = match ? unitWord(match[2]!) : undefined;
  if (!match || unit === undefined) return text;
  units.push(unit);
  const rest = match[1]!.replace(/\s+in$/i, "");
  return rest === match[1] ? takeTrailingUnit(rest, units) : rest;
}

const DIRECTION = "(?:height|width|depth|length|thickness|ht|[hwdlt])";
const CHAIN = new RegExp(`(?:^|[\\s,:;-])(${DIRECTION}(?:\\s*[x×*/]\\s*${DIRECTION}){1,2})\\s*$`, "i");

/** `Dimensions H x W x D` -> the words before, and `HWD`. */
function takeOrder(text: string): { rest: string; order?: string } {
  const chain = CHAIN.exec(text) ?? /(?:^|\s)([hwdlt]{3})$/i.exec(text);
  const order = chain ? readOrder(chain[1]!) : undefined;
  return order === undefined ? { rest: text } : { rest: text.slice(0, chain!.index), order };
}

function readOrder(text: string): string | undefined {
  const steps = /^[hwdlt]{3}$/i.test(text.trim()) ? [...text.trim()] : text.trim().split(/\s*[x×*/]\s*/i);
  if (steps.length < 2 || !steps.every((step) => new RegExp(`^${DIRECTION}$`, "i").test(step))) return undefined;
  const letters = steps.map((step) => step[0]!.toUpperCase().replace("T", "D"));
  return new Set(letters).size === letters.length ? letters.join("") : undefined;
}

function list(text: string): readonly string[] {
  return text.split(", ");
}
