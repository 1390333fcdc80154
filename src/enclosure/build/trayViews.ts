import type { Mm } from "../../measure/units";
import type { Assembly, Tray } from "../assembly";
import type { PlacedPart } from "../placedPart";
import { along, extent, moved, X, Y, Z } from "../space";
import { openBodies, piecesOf, type Apart, type ApartGroup, type OpenBody } from "../view";

/** How far a lid is lifted, as a share of its width and height together. */
const LIFT = 0.16;

/** Trays drawn above each other, the boards of each around its inside. */
export function traysApart({ parts }: Assembly, lowestFirst: readonly Tray[]): Apart {
  const groups = lowestFirst.map((tray): ApartGroup => {
    return { pieces: piecesOf(partsOf(tray, parts)), around: tray.inside, bed: [] };
  });
  return { arranged: "above", groups, between: [] };
}

/** The enclosure with its lid lifted clear of the other trays. */
export function lidLifted({ parts, trays }: Assembly, lid: Tray): readonly OpenBody[] {
  const rim: Mm = Math.max(...trays.filter((tray) => tray !== lid).map((tray) => tray.outside.max[Z]));
  const clear = Math.max(0, rim - lid.outside.min[Z]);
  const up = along(Z, clear + LIFT * (extent(lid.outside, X) + extent(lid.outside, Y)));
  return openBodies(
    trays.flatMap((tray) => {
      const bodies = piecesOf(partsOf(tray, parts)).map(({ body }) => body);
      return tray === lid ? bodies.map((body) => moved(body, up)) : bodies;
    }),
  );
}

export function partsOf(tray: Tray, parts: readonly PlacedPart[]): readonly PlacedPart[] {
  return parts.filter((part) => part.role !== "case" && part.tray === tray.name);
}
