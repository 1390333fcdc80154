import fc from "fast-check";
import type { Assembly } from "../../src/enclosure/assembly";
import type { PlacedPart } from "../../src/enclosure/placedPart";
import { benchInstruction } from "../../src/enclosure/benchInstruction";
import { boardParts } from "../../src/enclosure/part";
import type { Axis } from "../../src/enclosure/space";
import { MM_PER } from "../../src/measure/units";
import { anyItem, anyShop, assemblyOf, EVERY_STRUCTURE, titled } from "./everyEnclosure";
import { book, enclosed } from "./sizing";

const RUNS = Number(process.env["SOAK_RUNS"] ?? 12);

const instructionsFor = (kind: string, text: string): Readonly<Record<string, string>> => {
  const assembly = enclosed(book(300, 210, 40), kind, text);
  return Object.fromEntries(
    boardParts(assembly).map((part) => [part.fullName, benchInstruction(part, assembly, "mm")]),
  );
};

describe("how to cut each part of the worked example", () => {
  test.each([
    [
      "tray",
      "construction=on base",
      {
        base: "inside 303 x 213; add 2 boards each way",
        "side wall": "match the base; height: inside depth 42.5",
        "head wall": "inside width 213; height: match the side wall",
      },
    ],
    [
      "tray",
      "construction=around base; through=head",
      {
        base: "inside 303 x 213",
        "side wall": "match the base; height: inside depth 42.5; add 1 board",
        "head wall": "match the base; add 2 boards; height: match the side wall",
      },
    ],
    [
      "tray",
      "base board=3; end cards=yes",
      {
        base: "inside 303 x 213",
        "side wall": "match the base; add 2 boards; height: inside depth 42.5; add 1 base board",
        "head wall": "match the base; height: match the side wall",
        "flange card":
          "length: match the side wall; width: match the base; add 2 boards; " +
          "cut over on every edge, glue on, trim flush to 307 x 217",
        "end card":
          "length: match the flange card; width: match the side wall; add 1 card; " +
          "cut over on every edge, glue on, trim flush to 217 x 45.9",
      },
    ],
    [
      "tray",
      "construction=around base; wall layers=2",
      {
        base: "inside 303 x 213; add 2 boards each way",
        "inner side wall": "match the base; height: inside depth 42.5",
        "inner head wall": "inside width 213; height: match the inner side wall",
        "outer side wall": "match the base; height: match the inner side wall; add 1 board",
        "outer head wall": "match the base; add 2 boards; height: match the outer side wall",
      },
    ],
    [
      "slipcase",
      "",
      {
        // Open at the spine: a board is added at the back alone.
        side: "length: inside height 302; add 2 boards; width: inside width 210.5; add 1 board",
        "back wall": "match the side; height: inside depth 42",
        "head wall": "inside width 210.5; height: match the back wall",
      },
    ],
    [
      "clamshell box",
      "",
      {
        "small base": "inside 303 x 213",
        "small fore-edge wall": "match the base; height: inside depth 42.5; add 1 board",
        "small head wall": "match the base; add 1 board; height: match the fore-edge wall",
        "large base": "inside 310 x 217",
        "large fore-edge wall": "match the base; height: inside depth 46.5; add 1 board",
        "large head wall": "match the base; add 1 board; height: match the fore-edge wall",
        "case board": "cut to size",
        "case spine": "length: match the case board; width: cut to size",
      },
    ],
    [
      "folded tray",
      "",
      {
        blank: "cut part-way through at the folds, on the outside; cut away the corners, 40.5 along the length by 42.5",
        "joint strip": "",
      },
    ],
    [
      "folded tray",
      "fold=crease",
      // Inside width 217: creased 217 - 2 apart; tabs a turn-in long.
      { blank: "crease at the folds; leave tabs 15 long and 42.5 high on the head walls, creased 215 apart" },
    ],
    ["four-flap wrapper", "", { "inner piece": "crease at the folds", "outer piece": "crease at the folds" }],
  ])("%s, %s", (kind, text, wanted) => {
    expect(instructionsFor(kind, text)).toEqual(wanted);
  });

  test("in inches, in fractions of the rule", () => {
    const assembly = enclosed({ height: 304.8, width: 209.55, depth: 38.1 }, "tray", "unit=in; wall board=80 pt");
    const [base, side] = boardParts(assembly);
    expect(benchInstruction(base!, assembly, "in")).toBe("inside 12 1/8 x 8 3/8");
    expect(benchInstruction(side!, assembly, "in")).toBe(
      "match the base; add 2 boards; height: inside depth 1 5/8; add 1 board",
    );
  });
});

/** One direction of an instruction: `match the base; add 2 boards, take away 1 card`. */
interface Direction {
  readonly start: string;
  readonly differences: string;
}

/** Reads an instruction as a person at the bench would: what to start from, along and across, and what to add. */
function directionsOf(instruction: string, isWall: boolean): readonly [Direction, Direction] {
  const [matching = ""] = instruction.split("; cut over on every edge");
  const [first, second] = isWall ? matching.split("; height: ") : matching.replace(/^length: /, "").split("; width: ");
  const direction = (words: string): Direction => {
    const [start = "", differences = ""] = words.split("; ");
    return { start, differences: differences.replace(" each way", "") };
  };
  if (second !== undefined) return [direction(first!), direction(second)];
  const both = direction(matching);
  const sizes = /^inside (.+) x (.+)$/.exec(both.start);
  if (sizes === null) return [both, both];
  return [
    { ...both, start: `inside ${sizes[1]}` },
    { ...both, start: `inside ${sizes[2]}` },
  ];
}

/** `10 3/8` or `44.5`, as printed in a unit. */
function printedMm(text: string, unit: "mm" | "in"): number {
  const [, whole = "0", over, under] = /^(?:(\d+) )?(\d+)\/(\d+)$/.exec(text) ?? [];
  const value = over === undefined ? Number(text) : Number(whole) + Number(over) / Number(under);
  if (!Number.isFinite(value)) throw new Error(`${text} is no printed size`);
  return value * MM_PER[unit];
}

/** The size that the instruction leads to; undefined for `cut to size`. */
function followed(
  { start, differences }: Direction,
  axis: Axis,
  part: PlacedPart,
  assembly: Assembly,
  unit: "mm" | "in",
): number | undefined {
  if (start === "cut to size") return undefined;
  const matched = /^match the (.+)$/.exec(start)?.[1];
  const inside = /^inside (?:(?:height|width|depth) )?(.+)$/.exec(start)?.[1];
  if (matched === undefined && inside === undefined) throw new Error(`nothing to start from in "${start}"`);
  const size = matched === undefined ? printedMm(inside!, unit) : finished(cutBefore(matched, part, assembly), axis);
  return differences
    .split(", ")
    .filter((each) => each !== "")
    .reduce((sum, each) => sum + difference(each, part, assembly), size);
}

/** A matched part must be of the same tray and cut already. */
function cutBefore(name: string, part: PlacedPart, { parts }: Assembly): PlacedPart {
  const found = parts.slice(0, parts.indexOf(part)).find((each) => each.name === name && each.tray === part.tray);
  if (found === undefined) throw new Error(`no ${name} is cut before the ${part.name}`);
  return found;
}

function finished(part: PlacedPart, axis: Axis): number {
  if (part.lengthAxis === axis) return part.length;
  if (part.widthAxis === axis) return part.width;
  throw new Error(`the ${part.name} has no side to match`);
}

function difference(words: string, part: PlacedPart, { parts }: Assembly): number {
  const [, sign, count, word] = /^(add|take away) (\d+) (.+?)s?$/.exec(words) ?? [];
  const of = (role: PlacedPart["role"]) => parts.find((each) => each.role === role)?.board.caliper;
  const calipers: Readonly<Record<string, number | undefined>> = {
    board: of("wall"),
    "base board": of("base"),
    card: of("card"),
    "case board": part.role === "case" ? part.board.caliper : undefined,
  };
  const caliper = calipers[word ?? ""];
  if (caliper === undefined) throw new Error(`"${words}" is not understood`);
  return (sign === "add" ? 1 : -1) * Number(count) * caliper;
}

/** Half of the last figure printed: a hundredth of a millimetre; in inches a mark of the rule may be 0.005 in off. */
const TOLERANCE = { mm: 0.005 + 1e-6, in: 0.005 * 25.4 + 1e-6 } as const;

describe.each(["mm", "in"] as const)("in %s", (unit) => {
  test.each(titled(EVERY_STRUCTURE))(
    "%s, %s: following the printed instruction gives the size of the part",
    (_name, _text, { kind, settings }) => {
      const told = { followed: 0, cutToSize: 0 };
      fc.assert(
        fc.property(anyItem, anyShop, (item, shop) => {
          const assembly = assemblyOf(kind, item, { ...settings, ...shop, unit });
          if (assembly === undefined) return;
          for (const part of boardParts(assembly)) {
            const placed = part.placed!;
            if (placed.lengthAxis === undefined || placed.widthAxis === undefined) continue;
            const instruction = benchInstruction(part, assembly, unit);
            const [along, across] = directionsOf(instruction, placed.role === "wall");
            const sizes = [
              [followed(along, placed.lengthAxis, placed, assembly, unit), placed.length],
              [followed(across, placed.widthAxis, placed, assembly, unit), placed.width],
            ] as const;
            for (const [size, wanted] of sizes) {
              if (size === undefined) told.cutToSize += 1;
              else if (Math.abs(size - wanted) > TOLERANCE[unit])
                throw new Error(`${part.fullName}: "${instruction}" gives ${size}, not ${wanted}`);
              else told.followed += 1;
            }
          }
        }),
        { numRuns: RUNS, seed: 11 },
      );
      if (!kind.folded) expect(told.followed).toBeGreaterThan(3 * told.cutToSize);
    },
  );
});

test("only the case of a clamshell is cut to size: every other flat part can be matched", () => {
  for (const { kind, settings } of EVERY_STRUCTURE) {
    const assembly = assemblyOf(kind, book(300, 210, 40), settings)!;
    for (const part of boardParts(assembly))
      if (part.placed?.role !== "case") expect(benchInstruction(part, assembly, "mm")).not.toContain("cut to size");
  }
});
