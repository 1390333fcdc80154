import { MOST_COLUMNS, MOST_ROWS, type Area } from "../cellRef";

/** Rows or columns of one sheet that come or go, with everything after them. Rows and columns count from 1. */
export interface Shift {
  readonly sheet: string;
  readonly axis: "row" | "column";
  /** The first one that comes, in front of what is there now, or that goes. */
  readonly at: number;
  readonly count: number;
  readonly goes: boolean;
}

/** The first and last row, or column, of something. */
export interface Span {
  readonly first: number;
  readonly last: number;
}

/** How many rows or columns a sheet can have. */
export function mostOf({ axis }: Pick<Shift, "axis">): number {
  return axis === "row" ? MOST_ROWS : MOST_COLUMNS;
}

/** Where a row or column is afterwards; undefined when it goes. */
export function placeAfter(place: number, shift: Shift): number | undefined {
  const span = spanAfter({ first: place, last: place }, shift);
  return span?.first;
}

/** Where rows or columns are afterwards: longer with new ones between, shorter where some go; undefined when all go. */
export function spanAfter({ first, last }: Span, shift: Shift): Span | undefined {
  const { at, count, goes } = shift;
  if (goes) {
    const end = at + count - 1;
    if (first >= at && last <= end) return undefined;
    return {
      first: first < at ? first : first > end ? first - count : at,
      last: last > end ? last - count : Math.min(last, at - 1),
    };
  }
  const most = mostOf(shift);
  const moved = first >= at ? first + count : first;
  return moved > most ? undefined : { first: moved, last: Math.min(most, last >= at ? last + count : last) };
}

/** Where a rectangle is afterwards; undefined when it goes. */
export function areaAfter(area: Area, shift: Shift): Area | undefined {
  const span = spanAfter(spanOf(area, shift), shift);
  return span && withSpan(area, span, shift);
}

export function spanOf({ top, left, bottom, right }: Area, { axis }: Pick<Shift, "axis">): Span {
  return axis === "row" ? { first: top, last: bottom } : { first: left, last: right };
}

function withSpan(area: Area, { first, last }: Span, { axis }: Shift): Area {
  return axis === "row" ? { ...area, top: first, bottom: last } : { ...area, left: first, right: last };
}

/** Whether a rectangle would be cut: some of it goes, or something comes into it. */
export function isCut(area: Area, shift: Shift): boolean {
  const { first, last } = spanOf(area, shift);
  const end = shift.at + shift.count - 1;
  if (!shift.goes) return shift.at > first && shift.at <= last;
  const touched = first <= end && last >= shift.at;
  return touched && !(first >= shift.at && last <= end);
}

/** The shift that takes another back. */
export function reverseOf(shift: Shift): Shift {
  return { ...shift, goes: !shift.goes };
}
