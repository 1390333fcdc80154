import { isByGuide } from "../board/boardInForce";
import { guideAnswer } from "../board/guideAnswer";
import type { Sized } from "../item/sizeItem";
import { nearestMark } from "../measure/benchLength";
import { massText } from "../measure/massText";

/** Why an item has its board: the row's or the settings' own words, else the row of the board guide that covers it. */
export function boardReason({ item, kind, weightKg, requested }: Sized): string {
  const body = kind.body(requested);
  const { ownOfRow, wallBoard, answerUnit: unit } = requested;
  if (ownOfRow.has("wallBoard") || (body === "wrapper" && ownOfRow.has("wrapperCard"))) return "as this row asks";
  if (!isByGuide(kind, requested) || (body !== "wrapper" && wallBoard !== "auto")) return "as the settings name it";
  const { row, how, bySizeAlone } = guideAnswer({ item, kind, weightKg }, body, requested);
  const limits = [
    ...[
      ["short side", row.shortSide],
      ["long side", row.longSide],
      ["thickness", row.thickness],
    ].flatMap(([side, limit]) =>
      typeof limit === "number" ? [`${side} up to ${nearestMark(limit, unit)} ${unit}`] : [],
    ),
    ...(row.weightKg === undefined ? [] : [`up to ${massText(row.weightKg, unit)}`]),
  ];
  const covered = limits.length === 0 ? "its row without limits" : limits.join(", ");
  const instead = how === "exact" ? "" : `; the guide asks for ${row.askedText}, which is not in stock`;
  return `by the board guide: ${covered}${instead}${bySizeAlone ? "; by size alone, since no weight is known" : ""}`;
}
