import { plainName, listed } from "../settings/names";
import { DEFINITIONS, type Settings } from "../settings/schema";
import { STARTER_HOURS } from "../settings/starterHours";
import { bareLine, hundredth, hundredthSum, type CostLine } from "./estimateLine";
import { labourHours } from "./labourHours";
import type { Demand } from "./stockJobs";

/** The hours of one kind in a budget, or of setting up the work. */
export interface HoursLine {
  readonly work: string;
  /** Enclosures; of setting up, kinds in batches. */
  readonly number: number;
  /** For one of the usual size; undefined where nobody has said it. */
  readonly each: number | undefined;
  readonly hours: number;
  /** `example`: a starter value, from memory; `given`: the workshop's own. */
  readonly standing: "example" | "given" | "not given";
}

export const SET_UP = "setting up";

/** Hours of what a demand asks for, its copies and its share of the setting up counted, by demand. */
export function hoursOf(demands: readonly Demand[], settings: Settings): ReadonlyMap<Demand, number> {
  const each = labourHours(settings);
  const runs = runsOf(demands);
  return new Map(
    demands.map((demand) => {
      const setUp = each.size === 0 ? 0 : settings.setUpHours / runs.get(runOf(demand))!;
      return [demand, demand.quantity * (ownHours(demand, each, settings) + setUp)];
    }),
  );
}

/** Hours by kind, then of setting up: none where the settings say `labour hours=none`. */
export function hoursLines(
  groups: readonly { readonly demands: readonly Demand[] }[],
  settings: Settings,
): readonly HoursLine[] {
  const each = labourHours(settings);
  const all = groups.flatMap(({ demands }) => demands);
  if (each.size === 0 || all.length === 0) return [];
  const kinds = [...new Set(all.map(({ enclosure }) => enclosure))].map((work): HoursLine => {
    const own = all.filter(({ enclosure }) => enclosure === work);
    return {
      work,
      number: own.reduce((sum, { quantity }) => sum + quantity, 0),
      each: each.get(work),
      hours: hundredthSum(own, (demand) => demand.quantity * ownHours(demand, each, settings)),
      standing: standingOf(work, each.get(work)),
    };
  });
  const runs = groups.reduce((sum, { demands }) => sum + runsOf(demands).size, 0);
  if (settings.setUpHours === 0) return kinds;
  const isExample = settings.setUpHours === DEFINITIONS.setUpHours.fallback;
  const setUp = { work: SET_UP, number: runs, each: settings.setUpHours, hours: hundredth(runs * settings.setUpHours) };
  return [...kinds, { ...setUp, standing: isExample ? "example" : "given" }];
}

/** The line of labour of a group: it takes no contingency for spoilt material. */
export function labourLine(group: string, demands: readonly Demand[], settings: Settings): readonly CostLine[] {
  const lines = hoursLines([{ demands }], settings);
  if (lines.length === 0) return [];
  const rate = settings.labourRate === 0 ? undefined : settings.labourRate;
  const hours = hundredthSum(lines, (line) => line.hours);
  const cost = hundredth(hours * settings.labourRate);
  const without = lines.filter(({ standing }) => standing === "not given").map(({ work }) => work);
  return [
    {
      ...bareLine(group, "labour"),
      quantity: hours,
      unit: "hours",
      unitPrice: rate,
      cost,
      total: cost,
      notInCost: whyNotInCost(without, rate),
    },
  ];
}

function ownHours({ enclosure, relativeSize }: Demand, each: ReadonlyMap<string, number>, settings: Settings): number {
  return scaledHours(each.get(enclosure) ?? 0, relativeSize, settings);
}

/** Hours of one enclosure, of those of one of the usual size. */
export function scaledHours(usual: number, relativeSize: number, { hoursBySize }: Settings): number {
  return hundredth(usual * (hoursBySize ? relativeSize : 1));
}

function standingOf(kind: string, hours: number | undefined): HoursLine["standing"] {
  if (hours === undefined) return "not given";
  const starter = STARTER_HOURS.find(([name]) => plainName(name) === plainName(kind));
  return starter?.[1] === hours ? "example" : "given";
}

/** One kind in one batch is set up once. */
function runOf({ batch, enclosure }: Demand): string {
  return JSON.stringify([batch, enclosure]);
}

/** How many enclosures each run has. */
function runsOf(demands: readonly Demand[]): ReadonlyMap<string, number> {
  const runs = new Map<string, number>();
  for (const demand of demands) runs.set(runOf(demand), (runs.get(runOf(demand)) ?? 0) + demand.quantity);
  return runs;
}

function whyNotInCost(without: readonly string[], rate: number | undefined): string | undefined {
  const reasons = [
    ...(rate === undefined ? ["no rate: not in the cost until labour rate is set"] : []),
    ...(without.length === 0
      ? []
      : [`no hours for ${listed(without, "and")}: neither hours nor cost until labour hours has them`]),
  ];
  return reasons.length === 0 ? undefined : reasons.join("; ");
}
