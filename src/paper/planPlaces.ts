import type { Piece } from "../cutting/types";
import type { StockPlan } from "../estimate/stockPlans";
import type { Settings } from "../settings/schema";
import { groupTree } from "./groupTree";
import { sheetGroups } from "./sheetGroups";

/** Where the copies of a part come off the cutting plans: `sheet 3, B2a`; empty without a plan. */
export type PlanPlaces = (item: string, part: string) => readonly string[];

export const NO_PLAN: PlanPlaces = () => [];

/** The names that the cutting plans give to what comes off a sheet, for the labels of the pieces. */
export function planPlaces(plans: readonly StockPlan[], settings: Settings): PlanPlaces {
  const places = new Map<string, string[]>();
  const note = ({ item, part }: Piece, place: string) => {
    const own = places.get(keyOf(item, part));
    if (own === undefined) places.set(keyOf(item, part), [place]);
    else own.push(place);
  };
  for (const plan of plans)
    for (const group of sheetGroups(plan)) {
      const { tree } = groupTree(group, settings);
      for (const number of group.numbers)
        for (const { name, placement } of tree.pieces) {
          const { piece } = placement!;
          const place = `${plan.form === "roll" ? "length" : "sheet"} ${number}, ${name}`;
          for (const held of piece.holds ?? [{ piece, count: 1 }])
            for (let copy = 0; copy < held.count; copy++) note(held.piece, place);
        }
    }
  return (item, part) => places.get(keyOf(item, part)) ?? [];
}

function keyOf(item: string, part: string): string {
  return JSON.stringify([item, part]);
}
