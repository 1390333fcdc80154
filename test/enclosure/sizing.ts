import type { Assembly } from "../../src/enclosure/assembly";
import { restingItem, type Item } from "../../src/enclosure/restingItem";
import { kindNamed } from "../../src/enclosure/kindNamed";
import { settledOf } from "../settings/settledOf";
import { partList } from "../../src/covering/partList";
import type { Part } from "../../src/enclosure/part";
import type { Vec } from "../../src/enclosure/space";

/** An enclosure of one item by settings text alone, as a row of a survey would ask for it. */
export function enclosed(item: Item, kind: string, text = ""): Assembly {
  const settings = settledOf(text);
  return kindNamed(kind).assemble(restingItem(item, settings), settings);
}

export function partsOf(item: Item, kind: string, text = ""): readonly Part[] {
  return partList(enclosed(item, kind, text), settledOf(text));
}

export function partNamed(parts: readonly Part[], fullName: string): Part {
  const part = parts.find((each) => each.fullName === fullName);
  if (part === undefined) throw new Error(`no ${fullName} among ${parts.map((each) => each.fullName).join(", ")}`);
  return part;
}

export function book(height: number, width: number, depth: number): Item {
  return { height, width, depth };
}

/** Height, width, depth: the order in which sizes are quoted. */
export function hwd([x, y, z]: Vec): readonly number[] {
  return [y, x, z];
}

export function insideOf(assembly: Assembly, trayName: string): readonly number[] {
  const tray = assembly.trays.find((each) => each.name === trayName);
  if (tray === undefined) throw new Error(`no tray ${trayName}`);
  const { min, max } = tray.inside;
  return hwd([max[0] - min[0], max[1] - min[1], max[2] - min[2]]);
}

export function bareOutsideOf(assembly: Assembly, trayName: string): readonly number[] {
  const tray = assembly.trays.find((each) => each.name === trayName);
  if (tray === undefined) throw new Error(`no tray ${trayName}`);
  const { min, max } = tray.outside;
  return hwd([max[0] - min[0], max[1] - min[1], max[2] - min[2]]);
}

/** Lengths agree within a millionth of a millimetre's thousandth. */
export function expectLengths(got: readonly number[], wanted: readonly number[], tolerance = 1e-9): void {
  expect(got).toHaveLength(wanted.length);
  wanted.forEach((length, index) => expect(Math.abs((got[index] as number) - length)).toBeLessThanOrEqual(tolerance));
}
