import { readFileSync } from "node:fs";
import { resolve } from "node:path";
import { createRandom, type Random } from "../../src/cutting/random";
import { KINDS } from "../../src/enclosure/registry";
import { DEFAULT_FIGURES } from "../../src/item/figureCatalogue";
import { SETTING_NAMES } from "../../src/settings/given";

/** A call as a host makes it: the function's id and its arguments in order. */
export type HostCall = readonly [id: string, args: readonly unknown[]];

interface Parameter {
  readonly name: string;
  readonly dimensionality?: string;
  readonly repeating?: boolean;
}

const { functions: METADATA } = JSON.parse(readFileSync(resolve("dist/functions.json"), "utf8")) as {
  readonly functions: readonly { readonly id: string; readonly parameters: readonly Parameter[] }[];
};
/** One call in so many is of a whole survey, which takes some hundred times as long. */
const SURVEYS = 250;
const MEASURES = ["height", "width", "depth", "weight", "length", "caliper", "load", "sag", "measure", "text"];

/** Values that a cell can hold, good and bad: the extremes of every kind. */
const ODD: readonly unknown[] = [
  ...[0, -0, null, "", " ", true, false, -1, 1, 64, 1e9, 1e308, -1e308, 5e-324, 1e-310, 45_234, 5000],
  ...[2 ** 53, 20_000, 0.1 + 0.2, 1e21, 1e-7],
  ...["none", "NaN", "Infinity", "1e400", "0x20", "1,234", "10 3/8", "1/0", "3/8", "2 pt", "12'", `1' 2 1/2"`, "850 g"],
  ...["=", ";", "fit=", "all", "setting", "value", "stock", "material", "default", "__proto__", "constructor"],
  ...["toString", "hasOwnProperty", "unit=in", "unit=cm; fit=loose", "weight=3", "piece gap=1/8 in", "wall board=3 mm"],
  ...["½ m", "1\u00a0000", "30 x 20 x 4 cm", "30 x 20 cm", "H 300 mm, W 200 mm, D 40 mm, 2 kg", "\u202e40", "\ud800"],
  ...["9".repeat(400), "(".repeat(300), "a:".repeat(200), "1 x ".repeat(200), "\u001b[2J", "#N/A", "#VALUE!"],
  ...[{ code: "#N/A" }, {}, { basicValue: 3, type: "Double" }],
];

/** The calls of a seed, without end, the same on every machine. */
export function* hostCalls(seed: number): Generator<HostCall> {
  const random = createRandom(seed);
  const surveys = METADATA.filter(({ parameters }) => parameters[0]?.name === "items");
  const others = METADATA.filter((each) => !surveys.includes(each));
  for (;;) {
    const { id, parameters } = of(random.below(SURVEYS) === 0 ? surveys : others, random);
    yield [id, parameters.map((parameter) => argument(parameter, random))];
  }
}

function argument({ name, dimensionality, repeating }: Parameter, random: Random): unknown {
  if (repeating === true) return random.below(2) === 0 ? null : several(2, random, () => settings(random));
  if (name === "items") return items(random);
  if (name === "columns") return [several(4, random, () => of(FIGURES, random))];
  if (random.below(40) === 0) return dimensionality === "matrix" ? range(random) : of(ODD, random);
  if (name === "enclosure") return of(ENCLOSURES, random);
  if (name === "denominator") return of([2, 3, 8, 16, 64], random);
  if (name === "text") return text(random);
  if (MEASURES.includes(name) && dimensionality !== "matrix") return measure(random);
  return [[of(random.below(10) === 0 ? SELECTORS : (SELECTORS_OF[name] ?? SELECTORS), random)]];
}

function text(random: Random): unknown {
  const figure = () => String(measure(random)).slice(0, 8);
  const unit = of(["cm", "mm", "in", "m", "'", "", "pt"], random);
  return `${of(["", "H ", "overall: ", "(H x W x D) "], random)}${figure()} x ${figure()} x ${figure()} ${unit}${of(["", ", 2 kg", " (1 in)", "; 3 lb 2 oz"], random)}`;
}

const DIRECTIONS = ["height", "width", "depth", "along", "across", "all"];
/** What each selector takes, good for some kinds at least. */
const SELECTORS_OF: Readonly<Record<string, readonly unknown[]>> = {
  direction: DIRECTIONS,
  measure: ["length", "width", "count", "caliper", "grain", "material", "stock", "folds", "all"],
  which: ["least", "greatest", "likely least", "likely greatest", "all", "height", "width", "depth", "weight"],
  board: ["all", "grey board 1", "grey board 2", "grey board 3", 2, "3 mm"],
  column: ["names", "all"],
  base: ["base", "all", "lid base"],
  wall: ["side wall", "head wall", "all", "back wall"],
};

const ENCLOSURES = [...KINDS.flatMap(({ name, otherNames }) => [name, ...otherNames]), "none"];
const SELECTORS = [
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
    "side",
    "head",
  ],
  ...[
    "least",
    "greatest",
    "likely least",
    "likely greatest",
    "grey board 2",
    "grey board 3",
    "side wall",
    "base",
    "wrap",
  ],
  ...KINDS.flatMap(({ parts, trays }) => [...parts, ...trays.map((tray) => `${tray} side wall`)]),
  ...["spine", "lining", "case covering", "hinge", "base lining", "cushion"],
];
const FIGURES: readonly unknown[] = [
  ...DEFAULT_FIGURES,
  "default",
  "mass",
  "cautions",
  "outside width",
  "side wall length",
  "title",
  ...ODD.slice(0, 12),
];

/** Mostly what items measure; often far from it, on a scale of powers. */
function measure(random: Random): unknown {
  switch (random.below(30)) {
    case 0:
      return of(ODD, random);
    case 1:
    case 2:
    case 3:
      return 10 ** (random.below(40) - 20) * (1 + random.below(9));
    case 4:
      return `${random.below(60)} ${random.below(64)}/64 in`;
    default:
      return (1 + random.below(5_000)) / (1 + random.below(4));
  }
}

function settings(random: Random): unknown {
  const value = (): unknown => of([() => of(VALUES, random), () => of(ODD, random), () => measure(random)], random)();
  switch (random.below(5)) {
    case 0:
      return [["setting", "value"], ...several(2, random, () => [of(SETTING_NAMES, random), value()])];
    case 1:
      return [
        ["stock", "material", "caliper", "sheet length", "sheet width", "grain", "price"],
        ...several(3, random, () => [
          ...[of(["grey", "card", "cloth"], random), of(["board", "card", "covering", "lining", "cushion"], random)],
          ...[measure(random), measure(random), measure(random), of(["fixed", "free", ""], random)],
          of([12, "", 0, 1e300, ...ODD.slice(0, 6)], random),
        ]),
      ];
    case 2:
      return range(random);
    default:
      return [[several(2, random, () => `${of(SETTING_NAMES, random)}=${shownText(value())}`).join("; ")]];
  }
}

const VALUES = [
  ...["yes", "no", "auto", "full", "snug", "loose", "on base", "flanged base", "around base", "head", "side", "crease"],
  ...["cut", "foot", "in", "cm", "mm", "one piece", "0.3", "10", 2, 0.4, 1e-7, 4999, "grey board 2", "HWD", "LWD"],
];

function items(random: Random): unknown {
  return [
    ["id", "title", "height", "width", "depth", "weight", "enclosure", "quantity", "box"],
    ...several(6, random, (i) => [
      ...[`A${i}`, "a title", measure(random), measure(random), measure(random), of(["", 1, measure(random)], random)],
      ...[of(ENCLOSURES, random), of([1, "", 3, 0, -1, "x"], random), of(["", "", "", "B"], random)],
    ]),
  ];
}

function range(random: Random): unknown {
  const width = 1 + random.below(4);
  return several(4, random, () => Array.from({ length: width }, () => of(ODD, random)));
}

function several<Value>(most: number, random: Random, make: (index: number) => Value): Value[] {
  return Array.from({ length: 1 + random.below(most) }, (_, index) => make(index));
}

function of<Value>(list: readonly Value[], random: Random): Value {
  return list[random.below(list.length)]!;
}

function shownText(value: unknown): string {
  return typeof value === "object" ? JSON.stringify(value) : String(value);
}
