import type { Assembly } from "../enclosure/assembly";
import type { Kind } from "../enclosure/kind";
import { restingItem, type Item } from "../enclosure/restingItem";
import { extent, X, Y, Z } from "../enclosure/space";
import { InputError, shown } from "../measure/errors";
import { formatLengthWithUnit } from "../measure/formatLength";
import type { Mm } from "../measure/units";
import { listed, plainName } from "../settings/names";
import type { SettledSettings } from "../settings/schema";

/** A clear inside: x from spine to fore-edge, y from head to tail, z from the floor up. */
export interface Inside {
  readonly x: Mm;
  readonly y: Mm;
  readonly z: Mm;
}

/** An enclosure as it was put together around its item. */
export interface Made {
  readonly item: Item;
  readonly kind: Kind;
  readonly assembly: Assembly;
  readonly settings: SettledSettings;
}

/** The inside of the tray that holds the item. */
export function insideOf({ holder: { inside } }: Assembly): Inside {
  return { x: extent(inside, X), y: extent(inside, Y), z: extent(inside, Z) };
}

/** The same enclosure around a larger inside: what the item needs and what it is enlarged by are multiples of one step. */
export function enlarged({ item, kind, assembly, settings }: Made, size: Inside): Assembly {
  const inside = insideOf(assembly);
  const resting = restingItem(item, settings);
  return kind.assemble(
    {
      ...resting,
      width: resting.width + size.x - inside.x,
      height: resting.height + size.y - inside.y,
      depth: resting.depth + size.z - inside.z,
    },
    settings,
  );
}

/**
 * The enclosure in the standard size that its row names.
 *
 * @throws InputError when no size of that name is given, or it is of another kind or smaller than the item needs
 */
export function inStandardSize(made: Made): Assembly {
  const { kind, assembly, settings } = made;
  const { size: name, sizes, answerUnit: unit } = settings;
  const wanted = plainName(name);
  if (sizes.length === 0)
    throw new InputError(
      "size",
      shown(name),
      "give the table of sizes among the settings",
      "with the headings size, enclosure, height, width and depth, such as the answer of ENC.SIZES",
    );
  const own = sizes.filter((each) => plainName(each.enclosure) === kind.name);
  const size = own.find((each) => plainName(each.name) === wanted);
  if (size === undefined) {
    const names = own.map((each) => each.name);
    throw new InputError(
      "size",
      shown(name),
      names.length === 0 ? `the table of sizes has none for a ${kind.name}` : `give ${listed(names, "or")}`,
      "leave it blank to make it to measure",
    );
  }
  const inside = insideOf(assembly);
  const to = { x: size.width, y: size.height, z: size.depth };
  if (to.x < inside.x - NOISE_MM || to.y < inside.y - NOISE_MM || to.z < inside.z - NOISE_MM) {
    const text = ({ x, y, z }: Inside) => [y, x, z].map((mm) => formatLengthWithUnit(mm, unit)).join(" x ");
    throw new InputError(
      "size",
      `${shown(name)}, ${text(to)} inside`,
      `the object needs ${text(inside)}`,
      "choose a larger size, or leave it blank to make it to measure",
    );
  }
  return enlarged(made, to);
}

const NOISE_MM: Mm = 1e-6;
