import { coveringParts } from "../covering/partList";
import { boardParts, type Part } from "../enclosure/part";
import { X, Y, Z } from "../enclosure/space";
import { markAbove } from "../measure/benchLength";
import { formatLengthWithUnit } from "../measure/formatLength";
import { massIn, massUnitOf, tidy, type Mm } from "../measure/units";
import type { Settings } from "../settings/schema";
import { hazardCaution } from "./hazard";
import { liftMultipliers } from "./lifting";
import { enclosureMass } from "./mass";
import { misfitCure } from "./misfitCure";
import { boardCautions, type Boarded } from "./boardCautions";
import { weightOf } from "./itemWeight";
import { materialCautions } from "./materialCautions";
import { yearFit } from "./yearFit";

/** What a row is judged by. */
export interface Judged extends Boarded {
  /** What the survey's column `hazard` names; empty where it names none. */
  readonly hazard: string;
  /** The height as it was typed, where it was a text. */
  readonly heightAsTyped: string;
}

/** What to watch, gravest first; none when there is nothing. */
export function cautionsOf(judged: Judged, settings: Settings): readonly string[] {
  const parts = [...boardParts(judged.assembly), ...coveringParts(judged.assembly, settings)];
  return [
    ...hazard(judged),
    ...heavy(judged, parts, settings),
    ...tightFit(judged, settings),
    ...boardCautions(judged, settings),
    ...materialCautions(parts, settings),
    ...thickCovering(parts, settings),
    ...tooLong(parts, settings),
    ...judged.assembly.kind.cautions(judged.assembly, settings),
    ...estimated(judged, settings),
    ...catalogueHeight(judged),
  ];
}

function hazard({ hazard }: Judged): readonly string[] {
  return hazard === "" ? [] : [hazardCaution(hazard)];
}

/** Hands above the shoulder of a middle-sized adult, mm; from memory. */
const ABOVE_SHOULDER_MM: Mm = 1400;
const NEAR_REACH_MM: Mm = 250;
const SHORT_TRAVEL_MM: Mm = 250;
const TENTHS = 10;

/** Whether an item of a known weight, in its box, is over what one person lifts. */
export function isOverLift({
  settings,
  ...boxed
}: Pick<Boarded, "item" | "weightKg" | "assembly"> & { readonly settings: Settings }): boolean {
  const parts = [...boardParts(boxed.assembly), ...coveringParts(boxed.assembly, settings)];
  return heavy(boxed, parts, settings).length > 0;
}

function heavy(
  judged: Pick<Boarded, "item" | "weightKg">,
  parts: readonly Part[],
  settings: Settings,
): readonly string[] {
  const weight = weightOf(judged, settings);
  if (weight === undefined) return [];
  const boxed = weight.kg + enclosureMass(parts, settings);
  const { vertical } = liftMultipliers({ reach: NEAR_REACH_MM, height: ABOVE_SHOULDER_MM, travel: SHORT_TRAVEL_MM });
  const limit = settings.liftLimit * (settings.aboveShoulder ? vertical : 1);
  if (boxed <= limit) return [];
  // The weight is rounded up, so that what is over by a little is not shown as the limit itself.
  const shown = (kg: number, round: (tenths: number) => number) =>
    `${round(tidy(massIn(kg, settings.answerUnit) * TENTHS)) / TENTHS} ${massUnitOf(settings.answerUnit)}`;
  const where = settings.aboveShoulder ? " above the shoulder" : "";
  return [
    `boxed weight ${shown(boxed, Math.ceil)} is over ${shown(limit, Math.floor)}${where}: two people or a trolley; local rules first`,
  ];
}

function tightFit({ assembly, item }: Judged, settings: Settings): readonly string[] {
  const tight = (
    [
      ["height", Y],
      ["width", X],
      ["depth", Z],
    ] as const
  ).flatMap(([direction, axis]) => {
    if (axis === assembly.holder.mouth) return [];
    const { likelyLeast } = yearFit(assembly, item, axis, settings);
    return likelyLeast < 0
      ? [`${direction} by up to ${markAbove(-likelyLeast, settings.answerUnit)} ${settings.answerUnit}`]
      : [];
  });
  return tight.length === 0 ? [] : [`fit may close over the year: ${tight.join(", ")}; loosen the fit`];
}

/** A covering that takes more of the inside than the allowance gives it. */
function thickCovering(parts: readonly Part[], settings: Settings): readonly string[] {
  const covering = parts.find(({ material }) => material === "covering");
  const face = settings.coveringAllowance / 2;
  if (covering === undefined || covering.caliper <= face + NOISE_MM) return [];
  const shown = (mm: Mm) => shownLength(mm, settings);
  return [
    `${covering.stock} of ${shown(covering.caliper)} is thicker than the ${shown(face)} that covering allowance gives a face: give covering allowance=auto`,
  ];
}

const NOISE_MM: Mm = 1e-6;

/** Pieces that no sheet of their stock holds, or only against the grain. */
function tooLong(parts: readonly Part[], settings: Settings): readonly string[] {
  const found = new Map<string, string[]>();
  for (const part of parts) {
    const why = misfit(part, settings);
    if (why !== undefined) found.set(why, [...(found.get(why) ?? []), part.fullName]);
  }
  return [...found].map(([why, names]) => `${why}: ${names.join(", ")}`);
}

function misfit(part: Part, { stock, ...settings }: Settings): string | undefined {
  // Tape is as wide as its pieces.
  const edgeTrim = part.material === "closure" ? 0 : settings.edgeTrim;
  const sheets = stock.filter((row) => row.stock === part.stock && row.sheetWidth !== undefined);
  const [along, across] = part.grain !== "along width" ? [part.length, part.width] : [part.width, part.length];
  const fits = (a: Mm, b: Mm) =>
    sheets.some(
      (row) => a <= (row.sheetLength ?? Infinity) - 2 * edgeTrim && b <= (row.sheetWidth ?? 0) - 2 * edgeTrim,
    );
  if (sheets.length === 0 || fits(along, across)) return undefined;
  const againstGrain = fits(across, along);
  if (againstGrain && part.grain === "either") return undefined;
  const inSheets = sheets.some((row) => row.sheetLength !== undefined);
  const cure = misfitCure({ material: part.material, inSheets, againstGrain });
  if (againstGrain) return `fits ${part.stock} only against the grain (${cure})`;
  return `${inSheets ? "longer than any sheet" : "wider than the roll"} of ${part.stock} (${cure})`;
}

function estimated(judged: Judged, settings: Settings): readonly string[] {
  return weightOf(judged, settings)?.estimated === true ? ["weight estimated from item density, not weighed"] : [];
}

/** Library catalogues round a height up to whole centimetres. */
function catalogueHeight({ heightAsTyped }: Judged): readonly string[] {
  return /^\s*\d{1,3}\s*cm\.?\s*$/i.test(heightAsTyped)
    ? [`height ${heightAsTyped.trim()} looks like a catalogue's, rounded up to whole cm: measure it`]
    : [];
}

function shownLength(mm: Mm, { answerUnit: unit }: Settings): string {
  return formatLengthWithUnit(mm, unit);
}
