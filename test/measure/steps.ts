/**
 * Letters that patterns look at while some work is done: of a search all those up to its match, or to the end of the
 * text where there is none. Steps, not time: the same on any machine.
 */
export function lettersLookedAt(work: () => unknown): number {
  const own = Object.getOwnPropertyDescriptor(RegExp.prototype, "exec")!;
  const exec = own.value as (this: RegExp, text: string) => RegExpExecArray | null;
  let letters = 0;
  RegExp.prototype.exec = function (this: RegExp, text: string) {
    const from = this.global || this.sticky ? this.lastIndex : 0;
    const found = exec.call(this, text);
    const to = found === null ? (this.sticky ? from : String(text).length) : found.index + found[0].length;
    letters += 1 + Math.max(0, to - from);
    return found;
  };
  try {
    work();
  } catch {
    // A refusal ends a case as well as an answer does.
  } finally {
    RegExp.prototype.exec = exec;
  }
  return letters;
}
