import type { Part } from "../enclosure/part";
import { edgeCutTemplate } from "./edgeCutTemplate";
import { endTabbed } from "./endTabbed";
import type { Mm } from "../measure/units";
import type { Corner, Stretch, Template, TemplateLine } from "./template";

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
  if (corners.form === "edge cuts") return edgeCutTemplate(plain, part, corners);
  return corners.form === "tab" ? tabbed(plain, part, corners) : endTabbed(plain, part, corners);
}

/** Stretches between folds: base in the middle, walls beside it, flaps outermost. */
function between(folds: readonly Mm[], size: Mm, outward: readonly string[]): readonly Stretch[] {
  if (folds.length === 0) return [];
  const edges = [0, ...folds, size];
  // One fold alone: the base is open at its other end.
  const middle = folds.length === 1 ? 0 : folds.length / 2;
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
  return [false, true].flatMap((farLength) =>
    [false, true].map((farWidth) => ({ farLength, farWidth, length, width })),
  );
}
