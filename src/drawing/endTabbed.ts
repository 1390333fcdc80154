import type { EndTabs } from "../enclosure/placedPart";
import type { Part } from "../enclosure/part";
import type { Mm } from "../measure/units";
import type { Template, TemplateLine } from "./template";

/**
 * A blank that is open at one end, with tabs on its head walls at the other.
 *
 *     open end        crease
 *     +------------------+-----+ - - +   head wall, its tab, a corner cut away
 *     +------------------+-----+-----+
 *     |       base           |  wall |
 */
export function endTabbed(plain: Template, part: Part, tabs: EndTabs): Template {
  const { alongLength, alongWidth } = part.folds;
  const byLength = tabs.from === "length";
  const [long, wide] = byLength ? [part.length, part.width] : [part.width, part.length];
  const [ends, heads] = byLength ? [alongLength, alongWidth] : [alongWidth, alongLength];
  const point = (along: Mm, across: Mm): readonly [Mm, Mm] => (byLength ? [along, across] : [across, along]);
  const line = (kind: TemplateLine["kind"], from: readonly [Mm, Mm], to: readonly [Mm, Mm]): TemplateLine => ({
    kind,
    from: point(...from),
    to: point(...to),
  });
  const [head = 0, tail = 0] = heads;
  const [fold = 0] = ends;
  const tip = tabs.crease + tabs.long;
  const one: readonly (readonly [TemplateLine["kind"], readonly [Mm, Mm], readonly [Mm, Mm]])[] = [
    ["fold", [0, head], [tabs.crease, head]],
    ["fold", [tabs.crease, 0], [tabs.crease, tabs.high]],
    ["cut", [tabs.crease, tabs.high], [tabs.crease, head]],
    ["cut", [tabs.crease, tabs.high], [tip, tabs.high]],
    ["cut", [fold, tabs.wallFrom], [long, tabs.wallFrom]],
  ];
  const far = ([along, across]: readonly [Mm, Mm]): readonly [Mm, Mm] => [along, wide - across];
  return {
    ...plain,
    lines: [
      line("fold", [fold, head], [fold, tail]),
      ...one.flatMap(([kind, from, to]) => [line(kind, from, to), line(kind, far(from), far(to))]),
    ],
    corners: [false, true].map((farAcross) => ({
      farLength: byLength || farAcross,
      farWidth: !byLength || farAcross,
      length: byLength ? long - tip : tabs.high,
      width: byLength ? tabs.high : long - tip,
    })),
  };
}
