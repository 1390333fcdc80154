import type { Assembly } from "../enclosure/assembly";
import type { PlacedPart } from "../enclosure/placedPart";
import { restingItem, type Item } from "../enclosure/restingItem";
import { extent, X, Y, Z, type Axis } from "../enclosure/space";
import { InputError } from "../measure/errors";
import type { Mm } from "../measure/units";
import type { Settings } from "../settings/schema";
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
 * What makes the clear inside: the panel that holds it open, less the thicknesses of board within its length. In height
 * and width a base carries along the walls that stand on it when it moves, and across its grain it moves more than a
 * wall along its own.
 */
function insideTerms({ holder }: Assembly, axis: Axis, settings: Settings): readonly FitTerm[] {
  const { part, boards, of } = holder.spans[axis];
  const { caliper } = of.board;
  const clear = spanTerm(part, axis, extent(holder.inside, axis) + boards * caliper, settings);
  return boards === 0 ? [clear] : [clear, calipersTerm(of.name, boards, caliper, settings)];
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

function spanTerm(part: PlacedPart, axis: Axis, nominal: Mm, settings: Settings): FitTerm {
  const along = part.grainAxis === axis;
  return {
    label: part.name,
    nominal,
    sign: 1,
    hygroexpansion: (along ? settings.expansionAlong : settings.expansionAcross) * PER_METRE,
    tolerance: settings.cuttingError,
  };
}

/** What fills the inside: coverings, cushioning, the item. */
function takenTerms({ holder }: Assembly, item: Item, axis: Axis, settings: Settings): readonly FitTerm[] {
  const size = ITEM_SIZE[axis];
  const bare = restingItem(item, { ...settings, cushionBase: 0, cushionSides: 0, cushionTop: 0 });
  const cushioned = restingItem(item, settings);
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
    still("coverings", holder.coveredFaces[axis] * holder.covering),
    // Each is one board.
    still("tabs", tabs, (tabs / holder.spans[X].part.board.caliper) * settings.caliperTolerance),
    still("chemise", holder.wrapped?.[axis] ?? 0),
    still("cushioning", cushioned[size] - bare[size]),
  ];
}

const ITEM_SIZE = { [X]: "width", [Y]: "height", [Z]: "depth" } as const;
