import { arrange } from "./arrange";
import { construct, type CutSheet, ORDERS } from "./construct";
import { cutOrder } from "./cutOrder";
import { NONE } from "./forest";
import type { Job } from "./job";
import { type Panel, piecesIn } from "./panels";

/** Beyond so many pieces the time is better spent on the search. */
const TIDIED_UP_TO = 1000;

/** The same pieces on the same sheets, each sheet laid out again where that takes fewer set-ups, or as many and fewer cuts. */
export function tidySheets(job: Job, sheets: readonly CutSheet[]): readonly CutSheet[] {
  if (job.size > TIDIED_UP_TO) return sheets;
  return sheets.map((sheet) => {
    const own: Job = { ...job, kinds: [{ ...job.kinds[sheet.kind]!, limit: 1 }] };
    const pieces = piecesIn(sheet.panel);
    const panels = ORDERS.map((order) => construct(own, order, NONE, pieces))
      .filter((draft) => draft.out.length === 0)
      .flatMap((draft) => draft.sheets.map(({ panel }) => panel));
    const panel = panels.reduce((best, other) => (effortOf(other) < effortOf(best) ? other : best), sheet.panel);
    return { kind: sheet.kind, panel };
  });
}

/** Set-ups first, then cuts. */
function effortOf(panel: Panel): number {
  const settings = cutOrder(arrange(panel), 0, 0).map((cut) => cut.setting);
  const setUps = settings.filter((setting, index) => setting !== settings[index - 1]).length;
  return setUps * MANY_CUTS + settings.length;
}

/** More cuts than a sheet has. */
const MANY_CUTS = 1e6;
