/**
 * Hours to make one enclosure of each kind for an object of 300 x 210 x 40 mm: a start, to be replaced by the workshop's
 * own. From memory.
 */
export const STARTER_HOURS: readonly (readonly [kind: string, hours: number])[] = [
  ["tray", 1],
  ["folded tray", 0.4],
  ["lidded box", 2],
  ["three-tray box", 4],
  ["slipcase", 1.5],
  ["clamshell box", 3],
  ["folded clamshell", 0.7],
  ["four-flap wrapper", 0.2],
  ["flap portfolio", 1.5],
  ["drop-front box", 3],
];
