import { KINDS } from "../enclosure/registry";
import { plainName } from "../settings/names";
import { DIRECTIONS } from "./answers";

/** What is known of a call that is being typed. */
export interface TypedCall {
  /** The name of the function, without the namespace. */
  readonly name: string;
  readonly parameter: string;
  /** The enclosure that it names, as typed; empty where it names none, or takes it from a cell. */
  readonly enclosure: string;
}

/** The values that an argument offers: kinds, directions, and the walls, bases, parts and pieces of the kind. */
export function argumentValues({ name, parameter, enclosure }: TypedCall): readonly string[] {
  const wanted = plainName(enclosure);
  const kinds = KINDS.filter((kind) => [kind.name, ...kind.otherNames].some((each) => plainName(each) === wanted));
  const among = kinds.length === 0 ? KINDS : kinds;
  const parts = () => [...new Set(among.flatMap(({ trays, parts: own }) => withTrays(trays, own)))];
  switch (parameter) {
    case "enclosure":
      return KINDS.map((kind) => kind.name);
    case "direction":
      return name === "COVER.BLANK" ? ["along", "across", "all"] : [...DIRECTIONS, "all"];
    case "wall":
      return [...parts().filter((part) => part.endsWith("wall")), "all"];
    case "base":
      return parts().filter((part) => part.endsWith("base"));
    case "piece":
      return [...new Set(among.flatMap(({ trays, coverings }) => withTrays(trays, coverings)))];
    case "part":
      return parts();
    case "measure":
      return name === "PART" ? ["length", "width", "count", "caliper", "grain", "material", "stock", "folds"] : [];
    case "which":
      return name === "FIT.RANGE" ? ["least", "greatest", "likely least", "likely greatest"] : [];
    default:
      return [];
  }
}

/** A name alone means the tray that holds the item; with its tray it means that one. */
function withTrays(trays: readonly string[], names: readonly string[]): readonly string[] {
  return [...names, ...trays.flatMap((tray) => names.map((name) => `${tray} ${name}`))];
}
