import { runOf, type Blank, type CornerCut, type Stretch } from "../enclosure/blank";
import { wholeDown, wholeUp } from "../enclosure/part";
import type { Mm } from "../measure/units";
import type { Corner, Template, TemplateLine } from "./template";

/** A template of a covering or lining blank. Its size is in whole millimetres, rounded as the cut list rounds it. */
export function templateOfBlank(blank: Blank): Template {
  const round = blank.within ? wholeDown : wholeUp;
  const { along, across, cutAway } = blank;
  const corners = cutAway === undefined ? [] : cornersOf(cutAway);
  const [length, width] = [round(along), round(across)];
  const alongLength = ending(blank.runAlong ?? [], length);
  const alongWidth = ending(blank.runAcross ?? [], width);
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
    length,
    width,
    alongLength,
    alongWidth,
    lines: [...lines.flatMap((line) => slitAt(line, blank)), ...mitres(blank)],
    corners,
    grain: "along length",
    note: blank.note,
  };
}

/** Stretches that add up to the length that is cut: what it is rounded by is taken or given at the far end. */
function ending(run: readonly Stretch[], cut: Mm): readonly Stretch[] {
  const last = run.at(-1);
  if (last === undefined) return run;
  const length = last.length + cut - runOf(run);
  return length > 0 ? [...run.slice(0, -1), { ...last, length }] : run;
}

/** A fold at a corner between two walls is cut through where the strip is turned down inside. */
function slitAt(line: TemplateLine, { across, runAlong = [], slit = 0 }: Blank): readonly TemplateLine[] {
  const x = line.from[0];
  const corners = marksOf(runAlong).filter((_, index) =>
    [runAlong[index]!, runAlong[index + 1]!].every(({ name }) => name.endsWith("wall")),
  );
  if (slit === 0 || line.to[0] !== x || !corners.includes(x)) return [line];
  return [
    { ...line, to: [x, across - slit] },
    { kind: "cut", from: [x, across - slit], to: [x, across] },
  ];
}

/** A mitre leaves one and a half boards at a corner, so that the edge is covered. Common practice, no source. */
const LEFT_AT_CORNER = 1.5;

/** Cuts across the corners at which both sides are turned in. */
function mitres({ along, across, runAlong = [], runAcross = [], mitred }: Blank): readonly TemplateLine[] {
  if (mitred === undefined) return [];
  const turn = (run: readonly Stretch[], far: boolean) => {
    const end = far ? run.at(-1) : run[0];
    return end?.name === "turn-in" ? end.length : 0;
  };
  return [false, true].flatMap((farAlong) =>
    [false, true].flatMap((farAcross): readonly TemplateLine[] => {
      const [x, y] = [turn(runAlong, farAlong), turn(runAcross, farAcross)];
      const reach = x + y - LEFT_AT_CORNER * mitred * Math.SQRT2;
      if (x === 0 || y === 0 || reach <= 0) return [];
      const [a, b] = [farAlong ? along - reach : reach, farAcross ? across - reach : reach];
      return [{ kind: "cut", from: [a, farAcross ? across : 0], to: [farAlong ? along : 0, b] }];
    }),
  );
}

/** Where one stretch ends and the next begins. */
function marksOf(stretches: readonly Stretch[]): readonly Mm[] {
  const marks: Mm[] = [];
  let at = 0;
  for (const { length } of stretches.slice(0, -1)) marks.push((at += length));
  return marks;
}

function cornersOf({ along, across, at }: CornerCut): readonly Corner[] {
  return [false, true]
    .flatMap((farLength) => [false, true].map((farWidth) => ({ farLength, farWidth, length: along, width: across })))
    .filter(({ farLength, farWidth }) => at === "all" || (at === "far along" ? farLength : farWidth));
}
