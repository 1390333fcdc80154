import { DEPLOYED, loadExcelRuntime, readBuild } from "./excelRuntime";
import type { Argument } from "./marshal";
import { pageThreads, type PageThreads } from "./pageThreads";

const ITEMS: Argument = [
  ["title", "height mm", "width mm", "depth mm", "enclosure"],
  ["Atlas", 300, 210, 40, "tray"],
  ["Herbal", 250, 180, 30, "clamshell box"],
];
const ASKS: readonly (readonly [id: string, args: readonly Argument[]])[] = [
  ["SURVEY", [ITEMS, "mass"]],
  ["CUTLIST", [ITEMS]],
  ["SHELF", [ITEMS]],
  ["SHEETS", [ITEMS, "all"]],
  ["LAYOUT", [ITEMS, "all"]],
  ["ESTIMATE", [ITEMS]],
  ["SIZES", [ITEMS, "2"]],
];
/** The code that sizes and plans whole surveys, where the page itself must run it. */
const ON_THE_PAGE = /^surveyAsks\./;

const answersOf = async (threads?: PageThreads) => {
  const runtime = loadExcelRuntime(readBuild(), "null", threads);
  const answers = await runtime.callMany(ASKS);
  return { answers, onThePage: runtime.loaded.some((script) => ON_THE_PAGE.test(script)) };
};

test("no function of a whole survey works on the page's thread where it can have others, and all answer the same", async () => {
  const threads = pageThreads(DEPLOYED);
  const [beside, alone] = [await answersOf(threads), await answersOf()];
  await threads.end();
  expect(beside.onThePage).toBe(false);
  // One for what plans and searches, which then shares its plans; one for the rest, which does not wait for it.
  expect(threads.started).toEqual(["surveyWorker.js", "surveyWorker.js"]);
  expect(alone.onThePage).toBe(true);
  expect(beside.answers).toEqual(alone.answers);
  for (const answer of alone.answers) expect(answer).toHaveProperty("value");
});

test("where a thread cannot start the page answers by itself", async () => {
  const failing: PageThreads = {
    ...pageThreads(DEPLOYED),
    Worker: function Worker() {
      const thread = {
        onerror: (): void => undefined,
        postMessage: () => void setTimeout(() => thread.onerror(), 0),
      };
      return thread;
    },
  };
  expect((await answersOf(failing)).answers).toEqual((await answersOf()).answers);
});
