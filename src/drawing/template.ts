import { wholeDown, wholeUp, type Part } from "../enclosure/part";
import type { Mm } from "../measure/units";

/** A length of a blank between two of its lines, and what it lies on. */
export interface Stretch {
  readonly name: string;
  readonly length: Mm;
}

/** A covering or lining blank with the stretches that its size was summed from. */
export interface RunBlank {
  readonly name: string;
  readonly tray: string;
  readonly count: number;
  /** The grain's direction. */
  readonly along: Mm;
  readonly across: Mm;
  readonly within: boolean;
  readonly note: string;
  /** They sum to `along` and `across`; one or none where the blank has no line in that direction. */
  readonly runAlong?: readonly Stretch[];
  readonly runAcross?: readonly Stretch[];
  readonly cutAway?: CornerCut;
}

/** A rectangle cut out of corners: of all four, or of the two at the far end of `along` or `across`. */
export interface CornerCut {
  readonly along: Mm;
  readonly across: Mm;
  readonly at: "all" | "far along" | "far across";
}

/** A line on a blank; x along its length, y along its width, from the corner. */
export interface TemplateLine {
  readonly kind: "fold" | "cut";
  readonly from: readonly [x: Mm, y: Mm];
  readonly to: readonly [x: Mm, y: Mm];
}

/** A corner of the blank that is cut away: 0 or 1 for the near or far end of each direction. */
export interface Corner {
  readonly farLength: boolean;
  readonly farWidth: boolean;
  readonly length: Mm;
  readonly width: Mm;
}

/** A flat piece with everything that is drawn on it before it is cut and folded. */
export interface Template {
  readonly name: string;
  readonly count: number;
  /** As cut. */
  readonly length: Mm;
  readonly width: Mm;
  readonly alongLength: readonly Stretch[];
  readonly alongWidth: readonly Stretch[];
  readonly lines: readonly TemplateLine[];
  readonly corners: readonly Corner[];
  readonly grain: Part["grain"];
  readonly note: string;
}

/** A template of a covering or lining blank. Its size is in whole millimetres, rounded as the cut list rounds it. */
export function templateOfBlank(blank: RunBlank): Template {
  const round = blank.within ? wholeDown : wholeUp;
  const { along, across, cutAway } = blank;
  const corners = cutAway === undefined ? [] : cornersOf(cutAway);
  const [alongLength, alongWidth] = [blank.runAlong ?? [], blank.runAcross ?? []];
  // A line ends where a corner is cut away.
  const start = (at: Mm, size: Mm, reach: Mm, depth: Mm, ends: (far: boolean) => boolean) =>
    (at < reach && ends(false)) || (at > size - reach && ends(true)) ? depth : 0;
  const has = (test: (corner: Corner) => boolean) => corners.some(test);
  const [a, b] = [cutAway?.along ?? 0, cutAway?.across ?? 0];
  const lines: TemplateLine[] = [
    ...marksOf(alongLength).map((x): TemplateLine => {
      const near = start(x, along, a, b, (far) => has((c) => c.farLength === far && !c.farWidth));
      const farther = start(x, along, a, b, (far) => has((c) => c.farLength === far && c.farWidth));
      return { kind: "fold", from: [x, near], to: [x, across - farther] };
    }),
    ...marksOf(alongWidth).map((y): TemplateLine => {
      const near = start(y, across, b, a, (far) => has((c) => c.farWidth === far && !c.farLength));
      const farther = start(y, across, b, a, (far) => has((c) => c.farWidth === far && c.farLength));
      return { kind: "fold", from: [near, y], to: [along - farther, y] };
    }),
  ];
  return {
    name: blank.tray === "" ? blank.name : `${blank.tray} ${blank.name}`,
    count: blank.count,
    length: round(along),
    width: round(across),
    alongLength,
    alongWidth,
    lines,
    corners,
    grain: "along length",
    note: blank.note,
  };
}

/** A template of a board or card: its folds, and what becomes of its corners. */
export function templateOfPart(part: Part): Template {
  const { fullName, count, length, width, grain, note, folds, corners } = part;
  const plain: Template = {
    name: fullName,
    count,
    length,
    width,
    alongLength: between(folds.alongLength, length, ["wall", "flap"]),
    alongWidth: between(folds.alongWidth, width, ["wall", "flap"]),
    lines: foldsAcross(part),
    corners: [],
    grain,
    note,
  };
  if (corners === undefined) return plain;
  if (corners.form === "notch")
    return {
      ...plain,
      lines: [...plain.lines, ...slits(part, corners)],
      corners: fourCorners(corners.alongLength, corners.alongWidth),
    };
  return tabbed(plain, part, corners);
}

/** Where one stretch ends and the next begins. */
export function marksOf(stretches: readonly Stretch[]): readonly Mm[] {
  const marks: Mm[] = [];
  let at = 0;
  for (const { length } of stretches.slice(0, -1)) marks.push((at += length));
  return marks;
}

/** Stretches between folds: base in the middle, walls beside it, flaps outermost. */
function between(folds: readonly Mm[], size: Mm, outward: readonly string[]): readonly Stretch[] {
  if (folds.length === 0) return [];
  const edges = [0, ...folds, size];
  const middle = folds.length / 2;
  return edges.slice(1).map((edge, index) => {
    const out = Math.abs(index - middle);
    return { name: out === 0 ? "base" : outward[out - 1]!, length: edge - edges[index]! };
  });
}

/** Folds run across the blank; of one that folds both ways, along the base alone. */
function foldsAcross({ length, width, folds: { alongLength, alongWidth } }: Part): readonly TemplateLine[] {
  const [y0, y1] = [alongWidth[0] ?? 0, alongWidth.at(-1) ?? width];
  const [x0, x1] = [alongLength[0] ?? 0, alongLength.at(-1) ?? length];
  return [
    ...alongLength.map((x): TemplateLine => ({ kind: "fold", from: [x, y0], to: [x, y1] })),
    ...alongWidth.map((y): TemplateLine => ({ kind: "fold", from: [x0, y], to: [x1, y] })),
  ];
}

/** Cuts that free the ends of the through walls, where they reach past the fold of their neighbours. */
function slits({ length, width, folds }: Part, notch: { alongLength: Mm; alongWidth: Mm }): readonly TemplateLine[] {
  const [x, y] = [folds.alongLength[0] ?? 0, folds.alongWidth[0] ?? 0];
  const near: TemplateLine[] =
    notch.alongLength < x
      ? [{ kind: "cut", from: [notch.alongLength, y], to: [x, y] }]
      : notch.alongWidth < y
        ? [{ kind: "cut", from: [x, notch.alongWidth], to: [x, y] }]
        : [];
  return near.flatMap((line) => mirrored(line, length, width));
}

/**
 * Tabs at the ends of the head walls: cut free along the side walls, creased where they turn.
 *
 *     +------+-----+---- ...   x along the tabs' height
 *     | away | tab | head
 *     +------+-----+  wall
 *     | side wall  |
 */
function tabbed(plain: Template, part: Part, tab: { long: Mm; high: Mm; creasesApart: Mm }): Template {
  const { length, width, folds } = part;
  const gap = (marks: readonly Mm[]) => (marks.at(-1) ?? 0) - (marks[0] ?? 0) - tab.creasesApart;
  const alongWidth = Math.abs(gap(folds.alongWidth)) <= Math.abs(gap(folds.alongLength));
  const [size, other] = alongWidth ? [width, length] : [length, width];
  const crease = (size - tab.creasesApart) / 2;
  const place = (high: Mm, at: Mm): readonly [Mm, Mm] => (alongWidth ? [high, at] : [at, high]);
  const headFold = (alongWidth ? folds.alongLength : folds.alongWidth)[0] ?? 0;
  const own: TemplateLine[] = [
    { kind: "cut", from: place(tab.high, crease - tab.long), to: place(tab.high, crease) },
    { kind: "cut", from: place(tab.high, crease), to: place(headFold, crease) },
    { kind: "fold", from: place(0, crease), to: place(tab.high, crease) },
  ];
  // Head walls stand between their creases, a little narrower than the base that they fold up from.
  const lines = plain.lines.map((line): TemplateLine => {
    const [across] = alongWidth ? [line.from[0] === line.to[0]] : [line.from[1] === line.to[1]];
    if (!across) return line;
    const at = alongWidth ? line.from[0] : line.from[1];
    return { ...line, from: place(at, crease), to: place(at, size - crease) };
  });
  const cut = place(tab.high, crease - tab.long);
  return {
    ...plain,
    lines: [...lines, ...own.flatMap((line) => mirrored(line, alongWidth ? other : size, alongWidth ? size : other))],
    corners: fourCorners(cut[0], cut[1]),
  };
}

/** A line at one corner, at all four. */
function mirrored({ kind, from, to }: TemplateLine, length: Mm, width: Mm): readonly TemplateLine[] {
  return [false, true].flatMap((farLength) =>
    [false, true].map((farWidth): TemplateLine => {
      const turn = ([x, y]: readonly [Mm, Mm]): readonly [Mm, Mm] => [
        farLength ? length - x : x,
        farWidth ? width - y : y,
      ];
      return { kind, from: turn(from), to: turn(to) };
    }),
  );
}

function fourCorners(length: Mm, width: Mm): readonly Corner[] {
  return cornersOf({ along: length, across: width, at: "all" });
}

function cornersOf({ along, across, at }: CornerCut): readonly Corner[] {
  return [false, true]
    .flatMap((farLength) => [false, true].map((farWidth) => ({ farLength, farWidth, length: along, width: across })))
    .filter(({ farLength, farWidth }) => at === "all" || (at === "far along" ? farLength : farWidth));
}
