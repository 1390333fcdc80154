import type { Workbook } from "./openWorkbook";
import { partOf } from "./parts";
import { attribute, readXml } from "./readXml";

/** The theme's colours, `#rrggbb`, in the order by which cell styles number them; none without a theme. */
export function themeColoursOf(workbook: Workbook): readonly string[] {
  const target = workbook.relations.find(({ kind }) => kind === "theme")?.target;
  const entry = target === undefined ? undefined : partOf(workbook.zip, target);
  if (!entry) return [];
  const found = new Map<string, string>();
  let name = "";
  readXml(entry, {
    open: (tag) => {
      if (ORDER.includes(tag.local)) name = tag.local;
      const value = tag.local === "srgbClr" ? attribute(tag, "val") : attribute(tag, "lastClr");
      if (name === "" || value === undefined || !/^[0-9a-f]{6}$/i.test(value)) return;
      if (!found.has(name)) found.set(name, `#${value.toLowerCase()}`);
    },
    close: (tag) => {
      if (tag.local === name) name = "";
    },
  });
  return ORDER.map((each) => found.get(each) ?? "#000000");
}

/**
 * A colour made lighter (`tint` above zero, up to 1) or darker (below zero).
 * Source: ECMA-376 part 1, 18.8.19, where the lightness moves; here each primary does, which is as near as a page needs.
 */
export function tinted(colour: string, tint: number): string {
  if (tint === 0) return colour;
  const primaries = [1, 3, 5].map((at) => parseInt(colour.slice(at, at + 2), 16));
  const moved = primaries.map((value) => Math.round(tint < 0 ? value * (1 + tint) : value + (FULL - value) * tint));
  return `#${moved.map((value) => value.toString(16).padStart(2, "0")).join("")}`;
}

const FULL = 255;

/** Cell styles number light before dark, unlike the theme. */
const ORDER = [
  "lt1",
  "dk1",
  "lt2",
  "dk2",
  "accent1",
  "accent2",
  "accent3",
  "accent4",
  "accent5",
  "accent6",
  "hlink",
  "folHlink",
];
