import type { EdgeCuts } from "../enclosure/placedPart";
import type { Part } from "../enclosure/part";
import type { Mm } from "../measure/units";
import type { Stretch, Template, TemplateLine } from "./template";

/** Panels of two trays and the spine between them, from one end and from one edge. */
const ALONG = ["inside", "rim", "wall", "small base", "spine", "large base", "wall", "rim", "inside"];
const ACROSS = ["large wall", "step", "small base", "step", "large wall"];

/**
 * A blank that is cut in along both of its edges, with tabs on its head walls.
 *
 *              +-----+------------+
 *              | tab |  head wall |
 *     +--------+-----+------------+--- ...
 *     |  folds over  |    base    |  spine
 */
export function edgeCutTemplate(plain: Template, { folds, length, width }: Part, cuts: EdgeCuts): Template {
  const { along, steps, fromEnd, tabs } = cuts;
  const lies = along === "length";
  const [creases, across] = lies ? [folds.alongLength, width] : [folds.alongWidth, length];
  const line = (kind: TemplateLine["kind"], from: TemplateLine["from"], to: TemplateLine["to"]): TemplateLine =>
    lies ? { kind, from, to } : { kind, from: [from[1], from[0]], to: [to[1], to[0]] };
  const both = (kind: TemplateLine["kind"], [u0, v0]: TemplateLine["from"], [u1, v1]: TemplateLine["to"]) => [
    line(kind, [u0, v0], [u1, v1]),
    line(kind, [u0, across - v0], [u1, across - v1]),
  ];
  const named = (stretches: readonly Stretch[], names: readonly string[]) =>
    stretches.map((each, index) => ({ ...each, name: names[index]! }));
  return {
    ...plain,
    alongLength: named(plain.alongLength, lies ? ALONG : ACROSS),
    alongWidth: named(plain.alongWidth, lies ? ACROSS : ALONG),
    lines: [
      ...creases.map((at) => line("fold", [at, edgeAt(at, cuts)], [at, across - edgeAt(at, cuts)])),
      ...tabs.flatMap(({ crease, tip, foot, headCrease, headFrom }) => [
        ...both("fold", [headFrom, headCrease], [crease, headCrease]),
        ...both("fold", [crease, Math.min(...deepBeside(tip, steps))], [crease, foot]),
        ...both("cut", [crease, foot], [tip, foot]),
        ...both("cut", [crease, headCrease], [crease, foot]),
      ]),
    ],
    edges: { along, steps, fromEnd },
  };
}

/** How deep the panels on either side of a crease begin; beside a tab the wall does below it. */
function edgeAt(at: Mm, { steps, tabs }: EdgeCuts): Mm {
  const within = tabs.filter(({ tip, crease }) => (at - tip) * (at - crease) < 0).map(({ foot }) => foot);
  return Math.max(0, ...deepBeside(at, steps), ...within);
}

function deepBeside(at: Mm, steps: EdgeCuts["steps"]): readonly Mm[] {
  return steps.filter(({ from, to }) => from <= at + NOISE_MM && to >= at - NOISE_MM).map(({ deep }) => deep);
}

const NOISE_MM: Mm = 1e-6;
