import { NONE, type Forest, type History, FIELDS } from "./forest";

/** Starts a step that can be taken back. */
export function begin(forest: Forest): void {
  const past = forest.history;
  past.recording = true;
  past.step++;
  past.logged = 0;
  past.made.length = 0;
  past.dropped.length = 0;
  past.openCount = forest.openCount;
  past.totalWorth = forest.totalWorth;
}

/** Keeps what was done since `begin`. */
export function commit(forest: Forest): void {
  const past = forest.history;
  for (const panel of past.dropped) past.unused[past.unusedCount++] = panel;
  past.dropped.length = 0;
  past.recording = false;
}

/** Takes back what was done since `begin`. */
export function rollback(forest: Forest): void {
  const past = forest.history;
  const { log } = past;
  for (let entry = 0, at = 0; entry < past.logged; entry++, at += FIELDS) {
    const panel = log[at]!;
    const slot = log[at + 9]!;
    forest.length[panel] = log[at + 1]!;
    forest.width[panel] = log[at + 2]!;
    forest.piece[panel] = log[at + 3]!;
    forest.axis[panel] = log[at + 4]!;
    forest.parent[panel] = log[at + 5]!;
    forest.first[panel] = log[at + 6]!;
    forest.next[panel] = log[at + 7]!;
    forest.previous[panel] = log[at + 8]!;
    forest.slot[panel] = slot;
    forest.depth[panel] = log[at + 10]!;
    forest.worth[panel] = past.worthLog[entry]!;
    if (slot !== NONE) putInSlot(forest, panel, slot);
  }
  for (const panel of past.made) past.unused[past.unusedCount++] = panel;
  forest.openCount = past.openCount;
  forest.totalWorth = past.totalWorth;
  past.recording = false;
}

/** Notes a panel as it is, once a step, before it changes. */
export function touch(forest: Forest, panel: number): void {
  const past = forest.history;
  if (!past.recording || past.touchedAt[panel] === past.step) return;
  past.touchedAt[panel] = past.step;
  if ((past.logged + 1) * FIELDS > past.log.length) growLog(past);
  const { log } = past;
  const at = past.logged * FIELDS;
  log[at] = panel;
  log[at + 1] = forest.length[panel]!;
  log[at + 2] = forest.width[panel]!;
  log[at + 3] = forest.piece[panel]!;
  log[at + 4] = forest.axis[panel]!;
  log[at + 5] = forest.parent[panel]!;
  log[at + 6] = forest.first[panel]!;
  log[at + 7] = forest.next[panel]!;
  log[at + 8] = forest.previous[panel]!;
  log[at + 9] = forest.slot[panel]!;
  log[at + 10] = forest.depth[panel]!;
  past.worthLog[past.logged++] = forest.worth[panel]!;
}

/** Gives a leftover its place among the open ones. */
export function putInSlot(forest: Forest, panel: number, slot: number): void {
  forest.slot[panel] = slot;
  forest.open[slot] = panel;
  forest.openLength[slot] = forest.length[panel]!;
  forest.openWidth[slot] = forest.width[panel]!;
}

function growLog(past: History): void {
  const log = new Int32Array(past.log.length * 2);
  const worthLog = new Float64Array(past.worthLog.length * 2);
  log.set(past.log);
  worthLog.set(past.worthLog);
  past.log = log;
  past.worthLog = worthLog;
}
