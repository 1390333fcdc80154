import type { Mm } from "../../measure/units";
import type { SettledSettings } from "../../settings/schema";
import type { Tray } from "../assembly";
import type { BlankLine, EdgeStep, PlacedPart } from "../placedPart";
import { cuboid, X, Y, type Vec } from "../space";
import { foldedOverTray, type Leaf } from "./foldedOverTray";

export interface CreasedClamshell {
  readonly blank: PlacedPart;
  readonly small: Tray;
  readonly large: Tray;
}

/**
 * Two trays and the spine between them, folded up from one blank; creases in mid-thickness. The panels are those of the
 * small tray, the spine, those of the large one.
 *
 * @param inside of the small tray
 */
export function creasedClamshell([width, height, depth]: Vec, settings: SettledSettings): CreasedClamshell {
  const { nestClearance: g, wallBoard: board } = settings;
  const t = board.caliper;
  const over: Vec = [width + 3 * t + g, height + 2 * t + g, depth + g];
  const small = foldedOverTray("small", [width, height, depth], settings);
  const large = foldedOverTray("large", over, settings, { at: [0, -t - g / 2, over[2]], turnedOver: true });
  // Its edges run on in line with the head creases of the large tray.
  const long = over[1] + t;
  const from = height / 2 - long / 2;
  const spine = cuboid(-t, 0, from, from + long, -t, over[2] + t);
  const flat = flatBlank(small.leaf, large.leaf, over[2] + t);
  const byLength = flat.length >= flat.across;
  const blank: PlacedPart = {
    name: "blank",
    tray: "",
    role: "folded",
    material: "board",
    board,
    count: 1,
    panels: [...small.panels, spine, ...large.panels],
    lengthAxis: undefined,
    widthAxis: undefined,
    grain: byLength ? "along width" : "along length",
    grainAxis: Y,
    length: byLength ? flat.length : flat.across,
    width: byLength ? flat.across : flat.length,
    trim: 0,
    folds: {
      by: "crease",
      alongLength: byLength ? flat.creases : flat.headCreases,
      alongWidth: byLength ? flat.headCreases : flat.creases,
    },
    corners: {
      form: "edge cuts",
      along: byLength ? "length" : "width",
      steps: flat.steps,
      fromEnd: "the end of the small tray",
      lines: flat.lines,
      panelsAlong: [...TRAY_PANELS, "small base", "spine", "large base", ...[...TRAY_PANELS].reverse()],
      panelsAcross: ["large head wall", "step", "small base", "step", "large head wall"],
      tabs: [
        { name: "small", ...small.leaf.tab },
        { name: "large", ...large.leaf.tab },
      ],
    },
  };
  return { blank, small: small.tray(blank), large: large.tray(blank) };
}

const TRAY_PANELS = ["inside", "rim", "fore-edge wall"];

interface FlatBlank {
  readonly length: Mm;
  readonly across: Mm;
  readonly creases: readonly Mm[];
  readonly headCreases: readonly Mm[];
  readonly steps: readonly EdgeStep[];
  readonly lines: readonly BlankLine[];
}

/** Both ends and the spine, laid out flat in a row: the small tray's end first. */
function flatBlank(small: Leaf, large: Leaf, spine: Mm): FlatBlank {
  const [first, second] = [small.length, small.length + spine];
  const half = Math.max(...large.reach.map((each) => each.half));
  const inward = (u: Mm) => first - u;
  const outward = (u: Mm) => second + u;
  const drawn = ({ lines }: Leaf, at: (u: Mm) => Mm) =>
    lines.map(({ kind, from: [u0, v0], to: [u1, v1] }): BlankLine => ({
      kind,
      from: [at(u0), half + v0],
      to: [at(u1), half + v1],
    }));
  const crease = (u: Mm, reach: Mm): BlankLine => ({ kind: "fold", from: [u, half - reach], to: [u, half + reach] });
  const ofSmall = stretchesOf(small).map(({ from, to, deep }) => ({ from: inward(to), to: inward(from), deep }));
  const ofLarge = stretchesOf(large).map(({ from, to, deep }) => ({ from: outward(from), to: outward(to), deep }));
  const reaches = [...ofSmall.reverse(), { from: first, to: second, deep: large.headCrease }, ...ofLarge];
  return {
    length: second + large.length,
    across: 2 * half,
    creases: [...small.creases.map(inward).reverse(), first, second, ...large.creases.map(outward)],
    headCreases: [half - large.headCrease, half - small.headCrease, half + small.headCrease, half + large.headCrease],
    steps: joined(reaches.map(({ from, to, deep }) => ({ from, to, deep: half - deep }))),
    lines: [
      ...drawn(small, inward),
      crease(first, small.headCrease),
      crease(second, large.headCrease),
      ...drawn(large, outward),
    ],
  };
}

/** Stretches of a leaf: from where to where, and how far it reaches there. */
function stretchesOf({ reach }: Leaf): readonly EdgeStep[] {
  return reach.map(({ to, half }, index) => ({ from: reach[index - 1]?.to ?? 0, to, deep: half }));
}

const NOISE_MM: Mm = 1e-9;

/** Without what comes to nothing; neighbours as deep are one. */
function joined(steps: readonly EdgeStep[]): readonly EdgeStep[] {
  const found: EdgeStep[] = [];
  for (const step of steps) {
    if (step.to - step.from < NOISE_MM) continue;
    const last = found.at(-1);
    if (last !== undefined && Math.abs(last.deep - step.deep) < NOISE_MM)
      found[found.length - 1] = { ...last, to: step.to };
    else found.push(step);
  }
  return found.filter(({ deep }) => deep > NOISE_MM);
}

/** The place of the spine among the panels of the blank: the only one outside the clear space at the spine. */
export function spineAt({ panels }: PlacedPart): number {
  return panels.findIndex(({ max }) => max[X] <= 0);
}
