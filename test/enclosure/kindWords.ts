import type { Kind } from "../../src/enclosure/kind";
import { KINDS } from "../../src/enclosure/registry";

/** `tray, slipcase or clamshell box`: the kinds as a message lists them. */
export function kindWords(those: (kind: Kind) => boolean = () => true): string {
  const names = KINDS.filter(those).map(({ name }) => name);
  return names.length === 1 ? names[0]! : `${names.slice(0, -1).join(", ")} or ${names.at(-1)!}`;
}
