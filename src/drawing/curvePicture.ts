import { lettering, textWidth } from "./lettering";
import { picture, straight, type Picture, type Shape } from "./picture";

/** A line of a curve: its name, and its height at each place, as a share of the base line (1). */
export interface Curve {
  readonly name: string;
  readonly shares: readonly number[];
}

const TEXT = 11;
const LEFT = 46;
const TOP = 12;
const BOTTOM = 34;
const RIGHT = 60;
const HEIGHT = 190;
const PER_CENT = 100;
/** One line whole, the others broken each in its own way: a page may have no colours. */
const DASHES = [undefined, [6, 3], [2, 2]] as const;

/** Curves over counts, each beside the same base line, with their names at their ends. */
export function curvePicture(title: string, counts: readonly number[], curves: readonly Curve[], width = 340): Picture {
  const highest = Math.max(1, ...curves.flatMap(({ shares }) => shares));
  const top = highest === 1 ? 1.1 : 1 + (highest - 1) * 1.05;
  const room = { width: width - LEFT - RIGHT, height: HEIGHT - TOP - BOTTOM };
  const x = (at: number) => LEFT + (counts.length < 2 ? 0 : (at / (counts.length - 1)) * room.width);
  const y = (share: number) => TOP + room.height * (1 - (share - 1) / (top - 1));
  const percent = (share: number) => `+${Math.round((share - 1) * PER_CENT)} %`;
  const axes: readonly Shape[] = [
    straight([LEFT, y(1)], [LEFT + room.width, y(1)]),
    straight([LEFT, TOP], [LEFT, y(1)]),
    ...[1, (1 + highest) / 2, highest].map((share) =>
      lettering(percent(share), LEFT - 4, y(share) + TEXT / 3, { size: TEXT, anchor: "end" }),
    ),
    ...counts.map((count, at) => lettering(String(count), x(at), y(1) + TEXT + 3, { size: TEXT, anchor: "middle" })),
    lettering("standard sizes", LEFT + room.width / 2, HEIGHT - 4, { size: TEXT, anchor: "middle" }),
  ];
  const names = namePlaces(curves.map(({ shares }) => y(shares.at(-1) ?? 1)));
  const lines = curves.flatMap(({ name, shares }, at): readonly Shape[] => {
    const dash = DASHES[at % DASHES.length];
    const stroke = { ink: 1, width: 1.5, ...(dash === undefined ? {} : { dash }) };
    return [
      { kind: "polyline", points: shares.map((share, place) => [x(place), y(share)] as const), stroke },
      lettering(name, LEFT + room.width + 6, names[at]! + TEXT / 3, { size: TEXT }),
    ];
  });
  const widest = Math.max(0, ...curves.map(({ name }) => textWidth(name, TEXT)));
  return picture(title, Math.max(width, LEFT + room.width + 6 + widest), HEIGHT, [...axes, ...lines]);
}

/** Names at the ends of lines, moved apart so that none lies over another. */
function namePlaces(ends: readonly number[]): readonly number[] {
  const order = ends.map((end, at) => ({ end, at })).sort((one, other) => one.end - other.end);
  const placed: number[] = [];
  let last = Number.NEGATIVE_INFINITY;
  for (const { end, at } of order) {
    last = Math.max(end, last + TEXT);
    placed[at] = last;
  }
  return placed;
}
