import { isBlank } from "../measure/blank";
import { InputError, shown } from "../measure/errors";
import { didYouMean, listed, plainName } from "../settings/names";
import type { Kind } from "./kind";
import { KINDS } from "./registry";

/**
 * The kind that a text names; case, hyphens and spaces do not count, and the trade's other words are accepted.
 *
 * @throws InputError with the nearest names
 */
export function kindNamed(text: unknown): Kind {
  const kind = typeof text === "string" ? (BY_NAME.get(text) ?? BY_NAME.get(plainName(text))) : undefined;
  if (kind !== undefined) return kind;
  const names = KINDS.map((each) => each.name);
  const near =
    typeof text === "string"
      ? didYouMean(
          text,
          KINDS.flatMap(({ name, otherNames }) => [name, ...otherNames]),
        )
      : "";
  const expected = `give ${listed(names, "or")}`;
  if (isBlank(text)) throw new InputError("enclosure", shown(null), expected, "", "enclosure not chosen");
  throw new InputError("enclosure", shown(text), expected, near);
}

const BY_NAME: ReadonlyMap<string, Kind> = new Map(
  KINDS.flatMap((kind) => [kind.name, ...kind.otherNames].map((name) => [plainName(name), kind] as const)),
);
