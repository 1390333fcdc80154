import type { Mm } from "../measure/units";
import type { Assembly, Case, Nest, Tray } from "./assembly";
import type { PlacedPart } from "./placedPart";
import { extent, X, Y, Z, type Axis } from "./space";

/** Parts that are cut together: those that sizes give, then those that are made to a finished tray. */
export interface Round {
  readonly parts: readonly PlacedPart[];
  /** The tray that is covered and measured before this round; undefined for the first. */
  readonly madeTo: Tray | undefined;
  readonly rules: readonly MeasureRule[];
}

/** A size that follows from the measure of a finished tray: `lid inside height = finished height + 2`. */
export interface MeasureRule {
  /** `lid inside`, `case board`. */
  readonly of: string;
  readonly direction: Axis;
  /** Added to the measure; below zero it is taken away. */
  readonly more: Mm;
}

/** The rounds in which an enclosure is cut: the tray that holds the item, trays that it goes into, boards of a case. */
export function roundsOf(assembly: Assembly): readonly Round[] {
  const { parts, nests, cover } = assembly;
  const later = new Set(nests.flatMap(({ outer }) => parts.filter(({ tray }) => tray === outer.name)));
  const ofTrays = cover?.cutFirst === true ? undefined : cover;
  const ofCase = ofTrays === undefined ? [] : [ofTrays.boards, ofTrays.spine].filter((part) => part !== undefined);
  const first: Round = {
    parts: parts.filter((part) => !later.has(part) && !ofCase.includes(part)),
    madeTo: undefined,
    rules: [],
  };
  const inners = [...new Set(nests.map(({ inner }) => inner))];
  const second = inners.map((inner): Round => {
    const around = nests.filter((nest) => nest.inner === inner);
    return {
      parts: around.flatMap(({ outer }) => parts.filter(({ tray }) => tray === outer.name)),
      madeTo: inner,
      rules: around.flatMap(rulesOf),
    };
  });
  // Trays of one piece are cut together.
  const made = second.filter(({ parts: cut }) => cut.length > 0);
  return [first, ...made, ...(ofTrays === undefined ? [] : [caseRound(assembly, ofTrays)])];
}

/** Outside of a tray as it is covered. */
export function finished({ outside, covering, outsideShown }: Tray, axis: Axis): Mm {
  const faces = axis === Z && outsideShown !== undefined ? 1 : 2;
  return extent(outside, axis) + faces * covering;
}

function rulesOf({ outer, made }: Nest): readonly MeasureRule[] {
  return ([Y, X, Z] as const).flatMap((direction) => {
    const more = made[direction];
    return more === undefined ? [] : [{ of: `${outer.name} inside`, direction, more }];
  });
}

/** A case is cut to the last tray. */
function caseRound({ nests, holder, parts }: Assembly, { boards, spine, ...cover }: Case): Round {
  const last = nests.at(-1)?.outer ?? holder;
  const rule = (of: string, direction: Axis, size: Mm): MeasureRule => ({
    of,
    direction,
    more: size - finished(last, direction),
  });
  return {
    parts: parts.filter((part) => part === boards || part === spine),
    madeTo: last,
    rules: [
      ...(boards === undefined
        ? []
        : [rule(boards.name, Y, cover.boardHeight), rule(boards.name, X, cover.boardWidth)]),
      ...(spine === undefined ? [] : [rule(spine.name, Z, cover.spineWidth)]),
    ],
  };
}
