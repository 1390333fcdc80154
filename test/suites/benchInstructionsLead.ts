import fc from "fast-check";
import type { Assembly } from "../../src/enclosure/assembly";
import { benchInstruction } from "../../src/enclosure/benchInstruction";
import { boardParts } from "../../src/enclosure/part";
import type { PlacedPart } from "../../src/enclosure/placedPart";
import type { Axis } from "../../src/enclosure/space";
import { MM_PER } from "../../src/measure/units";
import { anyItem, anyShop, assemblyOf, titled, type Structure } from "../enclosure/everyEnclosure";
import { book } from "../enclosure/sizing";

const RUNS = Number(process.env["SOAK_RUNS"] ?? 12);

/** Following the printed instruction gives the size of every part. */
export function benchInstructionsLead(structures: readonly Structure[]): void {
  describe.each(["mm", "in"] as const)("in %s", (unit) => {
    test.each(titled(structures))(
      "%s, %s: following the printed instruction gives the size of the part",
      (_name, _text, { kind, settings }) => {
        const told = { followed: 0, cutToSize: 0 };
        fc.assert(
          fc.property(anyItem, anyShop, (item, shop) => {
            const assembly = assemblyOf(kind, item, { ...settings, ...shop, answerUnit: unit });
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
                if (size === undefined) told.cutToSize += placed.role === "case" ? 0 : 1;
                else if (Math.abs(size - wanted) > TOLERANCE[unit])
                  throw new Error(`${part.fullName}: "${instruction}" gives ${size}, not ${wanted}`);
                else told.followed += 1;
              }
            }
          }),
          { numRuns: RUNS, seed: 11 },
        );
        if (told.followed + told.cutToSize > 0) expect(told.followed).toBeGreaterThan(3 * told.cutToSize);
      },
    );
  });

  test("only boards of a case are cut to size: every other flat part can be matched", () => {
    for (const { kind, settings } of structures) {
      const assembly = assemblyOf(kind, book(300, 210, 40), settings)!;
      for (const part of boardParts(assembly))
        if (!["case", "divider"].includes(part.placed!.role))
          expect(benchInstruction(part, assembly, "mm")).not.toContain("cut to size");
    }
  });
}

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

/** `10 3/8` or `44.5 +`, as printed in a unit. */
function printedMm(reading: string, unit: "mm" | "in"): number {
  const text = reading.replace(/ [+−]$/, "");
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

/** Half a mark of the bench rule: sizes are printed to 0.5 mm or 1/32 in. */
const TOLERANCE = { mm: 0.25 + 1e-6, in: 25.4 / 64 + 1e-6 } as const;
