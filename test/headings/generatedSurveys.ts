/** An object as it is, mm and kg. */
export interface MadeObject {
  readonly height: number;
  readonly width: number;
  readonly depth: number;
  readonly kg: number;
}

/** Whole surveys as collections are, from a seed: mostly books or papers, with what else a collection holds. */
export function collection(seed: number): readonly MadeObject[] {
  const random = randomFrom(seed);
  const rows = 20 + Math.floor(random() * 120);
  const main = pick(random, MAIN);
  const second = pick(random, MAIN);
  const guests = Array.from({ length: Math.floor(random() * 5) }, () => pick(random, GUESTS));
  const guestShare = guests.length === 0 ? 0 : 0.02 + random() * 0.3;
  return Array.from({ length: rows }, () => {
    const at = random();
    const make = at < guestShare ? pick(random, guests) : at > 0.75 ? second : main;
    return make(random);
  });
}

export type Random = () => number;

/** A small generator of numbers from 0 to 1, the same on any machine (mulberry32). */
export function randomFrom(seed: number): Random {
  let state = (seed * 0x9e3779b1) >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = state;
    t = Math.imul(t ^ (t >>> 15), t | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}

type Make = (random: Random) => MadeObject;

const between = (random: Random, least: number, most: number) => least * (most / least) ** random();

function block(
  random: Random,
  height: number,
  width: number,
  depth: number,
  density: readonly [number, number],
): MadeObject {
  const kgPerM3 = between(random, ...density);
  return { height, width, depth, kg: (height * width * depth * kgPerM3) / 1e9 };
}

const book: Make = (random) => {
  const height = between(random, 150, 420);
  return block(random, height, height * between(random, 0.62, 0.85), between(random, 8, 85), [450, 900]);
};
const pamphlet: Make = (random) => {
  const height = between(random, 140, 300);
  return block(random, height, height * between(random, 0.6, 0.8), between(random, 3, 14), [500, 900]);
};
const album: Make = (random) =>
  block(random, between(random, 180, 330), between(random, 230, 420), between(random, 20, 80), [350, 800]);
const papers: Make = (random) =>
  block(random, between(random, 250, 390), between(random, 200, 280), between(random, 30, 140), [250, 700]);

const MAIN: readonly Make[] = [book, book, pamphlet, album, papers];

const miniature: Make = (random) => {
  const height = between(random, 35, 76);
  return block(random, height, height * between(random, 0.6, 0.85), between(random, 6, 30), [500, 900]);
};
const coin: Make = (random) => {
  const across = between(random, 15, 60);
  return block(random, across, across, between(random, 1.2, 5), [4500, 8500]);
};
const map: Make = (random) =>
  block(random, between(random, 300, 1000), between(random, 300, 1200), between(random, 0.3, 2), [450, 900]);
const framed: Make = (random) =>
  block(random, between(random, 250, 900), between(random, 250, 900), between(random, 20, 60), [300, 900]);
const glass: Make = (random) => {
  const [height, width] = pick(random, [
    [120, 90],
    [180, 130],
    [240, 180],
    [165, 108],
    [300, 240],
  ] as const);
  return block(random, height, width, between(random, 1.2, 3), [2300, 2600]);
};
const hat: Make = (random) =>
  block(random, between(random, 90, 190), between(random, 240, 360), between(random, 260, 400), [12, 60]);
const type: Make = (random) =>
  block(random, between(random, 23, 25), between(random, 5, 60), between(random, 3, 20), [6000, 9500]);
const ceramic: Make = (random) =>
  block(random, between(random, 80, 350), between(random, 70, 250), between(random, 70, 250), [250, 900]);
const tile: Make = (random) =>
  block(random, between(random, 100, 200), between(random, 100, 200), between(random, 8, 16), [1700, 2200]);

const GUESTS: readonly Make[] = [miniature, coin, map, framed, glass, hat, type, ceramic, tile];

export function pick<T>(random: Random, list: readonly T[]): T {
  return list[Math.floor(random() * list.length)]!;
}
