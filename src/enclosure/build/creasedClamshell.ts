import type { Mm } from "../../measure/units";
import type { SettledSettings } from "../../settings/schema";
import type { Tray } from "../assembly";
import type { EdgeStep, PlacedPart } from "../placedPart";
import { AT_ORIGIN, cuboid, X, Y, type Vec } from "../space";
import { foldedOverTray, type Leaf } from "./foldedOverTray";
import { openTray } from "./openTray";

export interface CreasedClamshell {
  readonly blank: PlacedPart;
  readonly small: Tray;
  readonly large: Tray;
}

/** Half a board at either crease; the tabs, and what is folded over them. */
const BOARDS_IN_WIDTH = 3;

/**
 * Two trays and the spine between them, folded up from one blank; creases in mid-thickness. The panels are those of the
 * small tray, the spine, those of the large one.
 *
 * @param inside of the small tray
 */
export function creasedClamshell(inside: Vec, settings: SettledSettings): CreasedClamshell {
  const [width, height, depth] = inside;
  const { nestClearance: g, wallBoard: board } = settings;
  const t = board.caliper;
  const over: Vec = [width + 3 * t + g, height + 2 * t + g, depth + g];
  const above = { at: [0, -t - g / 2, over[2]] as const, turnedOver: true };
  const small = foldedOverTray(inside, settings);
  const large = foldedOverTray(over, settings, above);
  // Its edges run on in line with the head creases of the large tray.
  const beyond = (over[1] + t - height) / 2;
  const spine = cuboid(-t, 0, -beyond, height + beyond, -t, over[2] + t);
  const { length, across, creases, heads, ...corners } = flatBlank(small.leaf, large.leaf, over[2] + t);
  const lies = length >= across;
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
    grain: lies ? "along width" : "along length",
    grainAxis: Y,
    length: Math.max(length, across),
    width: Math.min(length, across),
    trim: 0,
    folds: { by: "crease", alongLength: lies ? creases : heads, alongWidth: lies ? heads : creases },
    corners: { form: "edge cuts", along: lies ? "length" : "width", fromEnd: "the end of the small tray", ...corners },
  };
  const form = { boards: BOARDS_IN_WIDTH, tabs: 0 };
  return {
    blank,
    small: openTray("small", inside, small.panels, blank, { ...form, place: AT_ORIGIN }),
    large: openTray("large", over, large.panels, blank, { ...form, place: above }),
  };
}

/** Both ends and the spine, laid out flat in a row: the small tray's end first. */
function flatBlank(small: Leaf, large: Leaf, spine: Mm) {
  const first = small.reach.at(-1)![0];
  const second = first + spine;
  const half = Math.max(...large.reach.map(([, reach]) => reach));
  const inward = (u: Mm) => first - u;
  const outward = (u: Mm) => second + u;
  const steps = ({ reach }: Leaf, from: Mm, at: (u: Mm) => Mm): readonly EdgeStep[] =>
    reach.map(([to, wide], index) => {
      const ends = [index === 0 ? from : at(reach[index - 1]![0]), at(to)];
      return { from: Math.min(...ends), to: Math.max(...ends), deep: half - wide };
    });
  const tabs = (name: string, { tab, headCrease, reach }: Leaf, at: (u: Mm) => Mm) => ({
    name,
    long: tab.long,
    high: tab.high,
    crease: at(tab.crease),
    tip: at(tab.crease + tab.long),
    foot: half - tab.foot,
    headCrease: half - headCrease,
    headFrom: at(reach[0]![0]),
  });
  return {
    length: outward(large.reach.at(-1)![0]),
    across: 2 * half,
    creases: [...small.creases.map(inward).reverse(), first, second, ...large.creases.map(outward)],
    heads: [-large.headCrease, -small.headCrease, small.headCrease, large.headCrease].map((v) => half + v),
    // The spine is as wide as the base of the large tray beside it.
    steps: [...[...steps(small, first, inward)].reverse(), ...steps(large, first, outward)].filter(
      ({ from, to, deep }) => to - from > NOISE_MM && deep > NOISE_MM,
    ),
    tabs: [tabs("small", small, inward), tabs("large", large, outward)],
  };
}

const NOISE_MM: Mm = 1e-9;

/** The place of the spine among the panels of the blank: the only one outside the clear space at the spine. */
export function spineAt({ panels }: PlacedPart): number {
  return panels.findIndex(({ max }) => max[X] <= 0);
}
