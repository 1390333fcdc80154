import { construct, ORDERS } from "../../src/cutting/construct";
import { firstDraft } from "../../src/cutting/firstDraft";
import { NONE } from "../../src/cutting/forest";
import { type Job, prepareSheets } from "../../src/cutting/job";
import { createRandom } from "../../src/cutting/random";
import { board, piece } from "./jobs";

const [byArea, byWidth] = ORDERS;

/** More than four pieces an item, of which the largest first go on fewer sheets than the widest first. */
function jobOf(items: number): Job {
  const random = createRandom(1);
  const pieces = Array.from({ length: 4 * items + 8 }, (_, at) =>
    piece(50 + random.below(600), 50 + random.below(400), { id: `${at}`, item: `B ${at % items}` }),
  );
  return prepareSheets(pieces, [board(1000, 700)], {}).job;
}

it("of up to 1,000 items is the better of two plans; of more one is made, the widest pieces first", () => {
  const sheets = [1000, 1001].map((items) => {
    const job = jobOf(items);
    const made = [byArea!, byWidth!].map((order) => construct(job, order, NONE).sheets.length);
    return [...made, firstDraft(job, () => 0).sheets.length];
  });
  expect(sheets).toEqual([
    [513, 515, 513],
    [514, 516, 516],
  ]);
});
