import type { Assembly, PlacedPart } from "../enclosure/assembly";
import { lying, type Item } from "../enclosure/lying";
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

/** Where a part ends where the inside does, to binary noise. */
const SAME_MM: Mm = 1e-6;
/** Settings give growth in millimetres to the metre. */
const PER_METRE = 1e-3;

/** What makes the clear inside: a part that long, or a longer one less the walls that stand on it. */
function insideTerms({ holder, parts }: Assembly, axis: Axis, settings: Settings): readonly FitTerm[] {
  const inside = extent(holder.inside, axis);
  const own = parts.filter((part) => part.tray === holder.name && part.role !== "card" && part.role !== "strip");
  const spans = own.filter((part) => part.lengthAxis === axis || part.widthAxis === axis);
  const exact = spans.find((part) => Math.abs(span(part, axis) - inside) < SAME_MM);
  if (exact !== undefined) return [spanTerm(exact, axis, span(exact, axis), settings)];
  const longer = spans.filter((part) => span(part, axis) > inside).sort((a, b) => span(a, axis) - span(b, axis))[0];
  // A folded piece has no part of its own that long: its panel spans the inside.
  const board = longer ?? own[0];
  if (board === undefined) return [];
  const over = longer === undefined ? 0 : span(longer, axis) - inside;
  const thickness: FitTerm = {
    label: "wall calipers",
    nominal: over,
    sign: -1,
    hygroexpansion: 0,
    tolerance: settings.caliperTolerance * Math.max(1, Math.round(over / board.board.caliper)),
  };
  return [spanTerm(board, axis, inside + over, settings), ...(over > SAME_MM ? [thickness] : [])];
}

function span(part: PlacedPart, axis: Axis): Mm {
  return extent(part.panels[0]!, axis);
}

function spanTerm(part: PlacedPart, axis: Axis, nominal: Mm, settings: Settings): FitTerm {
  const grain = grainAxis(part);
  // A wall's height, and a folded piece across its creases, lie across the grain.
  const along = grain === axis;
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
  const bare = lying(item, { ...settings, cushionBase: 0, cushionSides: 0, cushionTop: 0 });
  const cushioned = lying(item, settings);
  const faces = FACES[holder.shape][axis];
  const still = (label: string, nominal: Mm): FitTerm => ({
    label,
    nominal,
    sign: -1,
    hygroexpansion: 0,
    tolerance: 0,
  });
  return [
    {
      label: "item",
      nominal: bare[size],
      sign: -1,
      hygroexpansion: settings.itemExpansion * PER_METRE,
      tolerance: settings.measuringError,
    },
    still("coverings", faces * c),
    still("tabs", axis === X ? holder.tabs : 0),
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
