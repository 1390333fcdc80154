import type { Part } from "../enclosure/part";
import type { Mm } from "../measure/units";
import type { Settings } from "../settings/schema";
import type { Material } from "../settings/stock";

/**
 * Mass of an empty enclosure from its part list: each stock's own mass to the square metre, else a usual density; and
 * the adhesive that stays under laminated card, covering and lining, and between the plies of a laminated board.
 *
 * @param parts the whole part list, covering and cushioning included
 * @returns kg
 */
export function enclosureMass(parts: readonly Part[], settings: Settings): number {
  return parts.reduce((sum, part) => sum + partMass(part, settings), 0);
}

/** The adhesive alone, kg. */
export function enclosureMassOfAdhesive(parts: readonly Part[], settings: Settings): number {
  const without = { ...settings, adhesive: 0 };
  return enclosureMass(parts, settings) - enclosureMass(parts, without);
}

function partMass(part: Part, { stock, adhesive }: Settings): number {
  const { placed, count, material, caliper } = part;
  // What is trimmed off a laminated card weighs nothing in the box.
  const [length, width] = placed === undefined ? [part.length, part.width] : [placed.length, placed.width];
  const row = stock.find((each) => each.stock === part.stock);
  // A cushion is built up to its thickness from whatever the stock's is.
  const layers = material === "cushion" && row !== undefined && row.caliper > 0 ? caliper / row.caliper : 1;
  const massGm2 = row?.massGm2 === undefined ? usualMassGm2(material, caliper) : row.massGm2 * layers;
  const glued = GLUED[material] || placed?.role === "card" || placed?.role === "strip";
  const areaMm2 = count * (length * width - cutAwayMm2(part));
  // Between two plies lies one layer of adhesive.
  const layersOfAdhesive = (glued ? 1 : 0) + (part.plies - 1) / part.plies;
  return (areaMm2 * (massGm2 + layersOfAdhesive * adhesive)) / MM2_PER_M2 / GRAMS_PER_KG;
}

const CORNERS = 4;
/** Of a blank that is open at one end. */
const OPEN_CORNERS = 2;
/** Cut in alike. */
const EDGES = 2;

/** The corners of a blank that is folded up all round; of a creased one, all but its tabs. */
function cutAwayMm2({ corners, folds, length, width, recess }: Part): number {
  if (recess !== undefined) return recess.length * recess.width;
  if (corners === undefined) return 0;
  if (corners.form === "notch") return CORNERS * corners.alongLength * corners.alongWidth;
  if (corners.form === "end tab") {
    const free = (corners.from === "length" ? length : width) - corners.crease - corners.long;
    return OPEN_CORNERS * free * corners.high;
  }
  if (corners.form === "edge cuts")
    return corners.steps.reduce((sum, { from, to, deep }) => sum + EDGES * (to - from) * deep, 0);
  const [along = 0, across = 0] = [folds.alongLength[0], folds.alongWidth[0]];
  return CORNERS * (along * across - corners.long * corners.high);
}

const MM2_PER_M2 = 1e6;
const GRAMS_PER_KG = 1000;

const GLUED: Readonly<Record<Material, boolean>> = {
  board: false,
  card: false,
  covering: true,
  lining: true,
  cushion: false,
  closure: false,
};

/**
 * Densities where the stock table gives no mass, kg/m3 (grams to the square metre and millimetre). Board and card: a
 * greyboard of 1290 g/m2 at 2.0 mm (bulk after ISO 534); cloth, paper, foam and tape from memory.
 */
const DENSITY: Readonly<Record<Material, number>> = {
  board: 645,
  card: 645,
  covering: 800,
  lining: 800,
  cushion: 35,
  closure: 500,
};

/** Caliper of a cloth or paper whose caliper the table does not give, from memory. */
const USUAL_SHEET_MM: Mm = 0.3;

function usualMassGm2(material: Material, caliper: Mm): number {
  return DENSITY[material] * (caliper === 0 ? USUAL_SHEET_MM : caliper);
}
