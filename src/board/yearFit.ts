import type { Assembly, PlacedPart, Tray } from "../enclosure/assembly";
import { restingItem, type Item } from "../enclosure/restingItem";
import { extent, X, Y, Z, type Axis } from "../enclosure/space";
import { InputError } from "../measure/errors";
import type { Mm } from "../measure/units";
import type { Settings } from "../settings/schema";
import { grainAxis } from "./basePlate";
import { fitRange, type FitRange, type FitTerm } from "./fitRange";

/**
 * The free play that an item has over the year in one direction, from the chain of parts that sets the inside: the board
 * that spans it, the walls that stand on that board, the coverings, the item.
 *
 * @throws InputError when the humidity settings are out of order
 */
export function yearFit(assembly: Assembly, item: Item, axis: Axis, settings: Settings): FitRange {
  const { humidityLeast, humidityMade, humidityGreatest } = settings;
  if (humidityLeast > humidityMade || humidityMade > humidityGreatest)
    throw new InputError(
      "humidity",
      `${humidityLeast}, ${humidityMade} and ${humidityGreatest} %RH`,
      "give humidity least, when made and greatest in rising order",
    );
  const air = { drier: humidityLeast - humidityMade, damper: humidityGreatest - humidityMade };
  return fitRange([...insideTerms(assembly, axis, settings), ...takenTerms(assembly, item, axis, settings)], air);
}

/** Settings give growth in millimetres to the metre. */
const PER_METRE = 1e-3;

/**
 * What makes the clear inside. In height and width the base, less the walls that stand on it: it carries them along
 * when it moves, and across its grain it moves more than a wall along its own. In depth a wall, less the base that it
 * stands around.
 */
function insideTerms({ holder, parts }: Assembly, axis: Axis, settings: Settings): readonly FitTerm[] {
  const inside = extent(holder.inside, axis);
  const own = parts.filter((part) => part.tray === holder.name);
  const folded = own.find((part) => part.role === "folded");
  if (folded !== undefined) return foldedTerms(folded, holder, axis, settings);
  const [spanning, between] = axis === Z ? (["wall", "base"] as const) : (["base", "wall"] as const);
  const shortest = own
    .filter((part) => part.role === spanning && (part.lengthAxis === axis || part.widthAxis === axis))
    .reduce((least, part) => (span(part, axis) < span(least, axis) ? part : least));
  const stander = own.find((part) => part.role === between)!;
  const { caliper } = stander.board;
  const boards = Math.round((span(shortest, axis) - inside) / caliper);
  const clear = spanTerm(shortest, axis, inside + boards * caliper, settings);
  return boards === 0 ? [clear] : [clear, calipersTerm(stander.name, boards, caliper, settings)];
}

/**
 * A panel between folds. Cut part-way, it folds on its inner face, at the inside; a crease lies in mid-thickness, half
 * a board outside it, and the rim of a creased tray has but the one at its foot.
 */
function foldedTerms(folded: PlacedPart, holder: Tray, axis: Axis, settings: Settings): readonly FitTerm[] {
  const { caliper } = folded.board;
  const creased = holder.shape === "wrapper" || holder.tabs > 0;
  const boards = !creased ? 0 : axis === Z && holder.shape === "tray" ? 1 / 2 : 1;
  const panel = spanTerm(folded, axis, extent(holder.inside, axis) + boards * caliper, settings);
  return boards === 0 ? [panel] : [panel, calipersTerm(folded.name, boards, caliper, settings)];
}

/** Some thicknesses of one board: alike, since they are cut from one sheet, so that their errors add up. */
function calipersTerm(name: string, boards: number, caliper: Mm, { caliperTolerance }: Settings): FitTerm {
  return {
    label: `${name} caliper`,
    nominal: boards * caliper,
    sign: -1,
    hygroexpansion: 0,
    tolerance: boards * caliperTolerance,
  };
}

function span(part: PlacedPart, axis: Axis): Mm {
  return extent(part.panels[0]!, axis);
}

function spanTerm(part: PlacedPart, axis: Axis, nominal: Mm, settings: Settings): FitTerm {
  const along = grainAxis(part) === axis;
  return {
    label: part.name,
    nominal,
    sign: 1,
    hygroexpansion: (along ? settings.expansionAlong : settings.expansionAcross) * PER_METRE,
    tolerance: settings.cuttingError,
  };
}

/** What fills the inside: coverings, cushioning, the item. */
function takenTerms({ holder, covering: c }: Assembly, item: Item, axis: Axis, settings: Settings): readonly FitTerm[] {
  const size = ITEM_SIZE[axis];
  const bare = restingItem(item, { ...settings, cushionBase: 0, cushionSides: 0, cushionTop: 0 });
  const cushioned = restingItem(item, settings);
  const faces = FACES[holder.shape][axis];
  const still = (label: string, nominal: Mm, tolerance: Mm = 0): FitTerm => ({
    label,
    nominal,
    sign: -1,
    hygroexpansion: 0,
    tolerance,
  });
  const tabs = axis === X ? holder.tabs : 0;
  return [
    {
      label: "item",
      nominal: bare[size],
      sign: -1,
      hygroexpansion: settings.itemExpansion * PER_METRE,
      tolerance: settings.measuringError,
    },
    still("coverings", faces * c),
    // One on each side of the item.
    still("tabs", tabs, tabs === 0 ? 0 : 2 * settings.caliperTolerance),
    still("cushioning", cushioned[size] - bare[size]),
  ];
}

const ITEM_SIZE = { [X]: "width", [Y]: "height", [Z]: "depth" } as const;

/** Covered faces that the item lies between, by direction: width, height, depth. */
const FACES: Readonly<Record<Assembly["holder"]["shape"], readonly [number, number, number]>> = {
  tray: [2, 2, 1],
  sleeve: [1, 2, 2],
  wrapper: [0, 0, 0],
};
