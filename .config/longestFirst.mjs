import Sequencer from "@jest/test-sequencer";

/** Suites that take longest: begun last, one of them would keep a worker while the other has nothing to do. */
const LONGEST = ["inBrowser.test.ts", "unsaved.test.ts", "paperFile.test.ts", "geometry.test.ts"];

/** The order of jest, by what it knows of earlier runs or by the size of a file, but for the longest, which come first. */
export default class LongestFirst extends Sequencer {
  sort(tests) {
    const others = super.sort(tests);
    const longest = LONGEST.flatMap((name) => others.filter(({ path }) => path.endsWith(name)));
    return [...longest, ...others.filter((test) => !longest.includes(test))];
  }
}
