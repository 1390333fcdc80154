import type { Assembly } from "../../src/enclosure/assembly";
import type { Kind } from "../../src/enclosure/kind";
import { restingItem } from "../../src/enclosure/restingItem";
import { KINDS } from "../../src/enclosure/registry";
import { assembledView } from "../../src/drawing/assembledView";
import { ON_WHITE } from "../../src/drawing/look";
import type { Picture } from "../../src/drawing/picture";
import { svgOf } from "../../src/drawing/svgOf";
import { settledOf } from "../settings/settledOf";

/** The item of the worked examples. */
const ITEM = { height: 300, width: 210, depth: 40 };

/** Where the drawings of the table of kinds are kept, from the root of the repository. */
export const KINDS_FOLDER = "src/drawing/kinds";

/** The worked item in a kind, put together. */
export function assemblyFor(kind: Kind, text = ""): Assembly {
  const settings = settledOf(kind.restsOn === undefined ? text : `rests on=${kind.restsOn}; ${text}`);
  return kind.assemble(restingItem(ITEM, settings), settings);
}

export function pictureOf(kind: Kind): Picture {
  return assembledView(assemblyFor(kind));
}

/** The drawings of the table of kinds: file names, and what they hold. */
export function renderedKinds(): readonly { readonly file: string; readonly svg: string }[] {
  return KINDS.map((kind) => ({
    file: `${kind.name.replaceAll(" ", "-")}.svg`,
    svg: `${svgOf(pictureOf(kind), ON_WHITE)}\n`,
  }));
}
