import { ALONG_LENGTH, NONE } from "./forest";
import { UNITS_PER_MM } from "./grid";
import type { Job } from "./job";
import { STRETCH_LENGTH, STRETCH_WIDTH } from "./limits";
import type { Panel } from "./panels";
import type { Placement } from "./types";

/** Where each piece of an arranged sheet lies, in mm from the sheet's corner. */
export function placementsOf(job: Job, sheet: Panel, trim: number): readonly Placement[] {
  const placements: Placement[] = [];
  const visit = (panel: Panel, x: number, y: number) => {
    if (panel.piece !== NONE)
      placements.push(placementOf(job, panel, trim + x / UNITS_PER_MM, trim + y / UNITS_PER_MM));
    let [partX, partY] = [x, y];
    for (const part of panel.parts) {
      visit(part, partX, partY);
      if (panel.axis === ALONG_LENGTH) partX += part.length;
      else partY += part.width;
    }
  };
  visit(sheet, 0, 0);
  return placements;
}

function placementOf(job: Job, panel: Panel, x: number, y: number): Placement {
  const index = panel.piece;
  const piece = job.source[index]!;
  const turned = job.turn[index] === 1 && !liesAlong(job, panel);
  return {
    piece,
    copy: job.copy[index]!,
    x,
    y,
    length: turned ? piece.width : piece.length,
    width: turned ? piece.length : piece.width,
    turned,
  };
}

/** Whether a piece lies with its length along the panel's: each side as large, or larger by what it takes up of the waste. */
function liesAlong({ length, width, stretch, limits }: Job, panel: Panel): boolean {
  const own = (over: number, bit: number) =>
    over === 0 || (over > 0 && over <= limits.absorbed && (stretch[panel.piece]! & bit) !== 0);
  return (
    own(panel.length - length[panel.piece]!, STRETCH_LENGTH) && own(panel.width - width[panel.piece]!, STRETCH_WIDTH)
  );
}
