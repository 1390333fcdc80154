import { InputError } from "../../measure/errors";
import { formatLengthWithUnit } from "../../measure/formatLength";
import type { Mm } from "../../measure/units";
import type { Settings, SettledSettings } from "../../settings/schema";
import type { Tray } from "../assembly";
import type { PlacedPart } from "../placedPart";
import type { RestingItem } from "../restingItem";
import { cuboid, extent, X, Y, Z, type Cuboid } from "../space";
import { freePlay, oneFace } from "./allowances";
import type { BuiltTray } from "./trayBoards";

/** How much shorter a divider is than the covered space between the walls. */
const LESS_MM: Mm = 1;

/** What several items beside each other take more than their sizes and the play of one: play, and covered dividers. */
export function betweenItems({ columns, rows }: RestingItem, settings: SettledSettings): readonly [x: Mm, y: Mm] {
  const fit = freePlay(settings, "standard");
  const gap = settings.dividers ? settings.wallBoard.caliper + 2 * oneFace(settings) : 0;
  return [(columns.length - 1) * (fit.x + gap), (rows.length - 1) * (fit.y + gap)];
}

/**
 * The tray that holds several items, with dividers between them: those from head to tail are slotted half way from above
 * where cross dividers, slotted from below, cross them.
 *
 *     +-------+-------+
 *     |       |       |   divider, head to tail
 *     |-------+-------|   cross divider
 *     |       |       |
 *     +-------+-------+
 */
export function divided<T extends BuiltTray>(built: T, item: RestingItem, settings: SettledSettings): T {
  const { columns, rows, cushion } = item;
  if (columns.length * rows.length === 1) return built;
  if (settings.well)
    throw new InputError("well", "yes", "give no: a well holds one item", "or leave out the arrangement");
  const [x, y] = betweenItems(item, settings);
  const tray: Tray = { ...built.tray, wrapped: [x, y, 0] };
  if (!settings.dividers) return { ...built, tray };
  const [c, board] = [oneFace(settings), settings.wallBoard];
  const t = board.caliper;
  const fit = freePlay(settings, "standard");
  const { min, max } = tray.inside;
  const clear = c + cushion.sides + LESS_MM / 2;
  const foot = min[Z] + c + cushion.base;
  const high = heightOf(extent(tray.inside, Z) - 2 * c - cushion.base - cushion.top, settings);
  if (Math.min(...columns, ...rows, high) <= LESS_MM)
    throw new InputError("arrangement", "items of hardly a millimetre", "give larger items, or dividers=no");
  const places = (sizes: readonly Mm[], from: Mm, play: Mm) =>
    sizes.slice(0, -1).map((_, index) => {
      const before = sizes.slice(0, index + 1).reduce((sum, size) => sum + size + play, 0);
      return from + c + cushion.sides + before + index * (t + 2 * c) + c;
    });
  const across = places(columns, min[X], fit.x);
  const down = places(rows, min[Y], fit.y);
  // Along its length a divider is whole, but for the half of its height that each slot takes away.
  const pieces = (at: readonly Mm[], from: Mm, to: Mm, upper: boolean): readonly (readonly [Mm, Mm, Mm, Mm])[] => {
    const edges = [from, ...at.flatMap((place) => [place - c, place + t + c]), to];
    const half = foot + high / 2;
    return edges.slice(1).map((end, index) => {
      const start = edges[index]!;
      if (index % 2 === 0) return [start, end, foot, foot + high];
      return upper ? [start, end, half, foot + high] : [start, end, foot, half];
    });
  };
  const [y0, y1, x0, x1] = [min[Y] + clear, max[Y] - clear, min[X] + clear, max[X] - clear];
  const dividers = across.flatMap((place) =>
    pieces(down, y0, y1, false).map(([a, b, low, top]) => cuboid(place, place + t, a, b, low, top)),
  );
  const crossing = down.flatMap((place) =>
    pieces(across, x0, x1, true).map(([a, b, low, top]) => cuboid(a, b, place, place + t, low, top)),
  );
  const part = (name: string, axis: typeof X | typeof Y, size: Mm, count: number, panels: readonly Cuboid[]) =>
    count === 0 ? [] : [dividerPart(name, tray.name, board, axis, [size, high], count, panels)];
  return {
    ...built,
    tray,
    parts: [
      ...built.parts,
      ...part("divider", Y, y1 - y0, across.length, dividers),
      ...part("cross divider", X, x1 - x0, down.length, crossing),
    ],
  };
}

function dividerPart(
  name: string,
  tray: string,
  board: PlacedPart["board"],
  axis: typeof X | typeof Y,
  [length, high]: readonly [Mm, Mm],
  count: number,
  panels: readonly Cuboid[],
): PlacedPart {
  return {
    name,
    tray,
    role: "divider",
    material: "board",
    board,
    count,
    panels,
    lengthAxis: axis,
    widthAxis: Z,
    grain: "along length",
    grainAxis: axis,
    length,
    width: high,
    trim: 0,
    folds: { by: "crease", alongLength: [], alongWidth: [] },
    corners: undefined,
  };
}

/** @throws InputError naming `divider height` */
function heightOf(most: Mm, { dividerHeight, answerUnit: unit }: Settings): Mm {
  if (dividerHeight === "auto") return most;
  if (dividerHeight > 0 && dividerHeight <= most) return dividerHeight;
  const shown = (size: Mm) => formatLengthWithUnit(size, unit);
  throw new InputError("divider height", shown(dividerHeight), `give auto, or a length up to ${shown(most)}`);
}
