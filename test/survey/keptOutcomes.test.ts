import * as fc from "fast-check";
import { checkedSurvey } from "../../src/survey/checkedSurvey";

const HEADINGS = ["Shelfmark", "Height", "Width", "Depth", "Enclosure", "Quantity", "Box"];
const row = (height: number | string, enclosure = "tray", quantity: number | string = 1, box = "") => [
  `S ${height}`,
  height,
  200,
  30,
  enclosure,
  quantity,
  box,
];
const ROWS = [row(300), row(310, "clamshell box"), row(320, "tray", 2), row(330, "tray", 1, "A"), row(340, "", 1, "A")];
const SETTINGS = ["unit=mm"];
const read = (rows: readonly (readonly unknown[])[]) => checkedSurvey([HEADINGS, ...rows], SETTINGS);
const readAfter = (rows: readonly (readonly unknown[])[], before: ReturnType<typeof read>) =>
  checkedSurvey([HEADINGS, ...rows], SETTINGS, {}, before);

test("after one row has changed, that row and those that share a box are sized again, and no other", () => {
  const before = read(ROWS);
  const after = readAfter(
    ROWS.map((each, place) => (place === 1 ? row(305) : each)),
    before,
  );
  expect(after.outcomes.map((outcome, place) => outcome === before.outcomes[place])).toEqual([
    true,
    false,
    true,
    false,
    false,
  ]);
});

test("another unit in a heading sizes every row again", () => {
  const before = read(ROWS);
  const inInches = checkedSurvey([["Shelfmark", "Height in", ...HEADINGS.slice(2)], ...ROWS], SETTINGS, {}, before);
  expect(inInches.outcomes.filter((outcome) => before.outcomes.includes(outcome))).toEqual([]);
});

test("whatever changes in its rows, a survey reads after an earlier reading as it does by itself", () => {
  const anyRow = fc
    .tuple(
      fc.constantFrom<number | string>(300, 305, "31 cm", "tall", ""),
      fc.constantFrom("tray", "folded tray", "none", "", "no such box"),
      fc.constantFrom<number | string>(1, 2, "many"),
      fc.constantFrom("", "", "A"),
    )
    .map((cells) => row(...cells));
  // Enough sizes beside, so that the headings are in no doubt.
  const rows = fc.array(anyRow, { minLength: 2, maxLength: 4 }).map((some) => [...ROWS, ...some]);
  fc.assert(
    fc.property(rows, rows, fc.array(fc.boolean(), { minLength: 9, maxLength: 9 }), (one, other, changes) => {
      const mixed = one.map((each, place) => (changes[place] === true ? (other[place] ?? each) : each));
      expect(plain(readAfter(mixed, read(one)))).toEqual(plain(read(mixed)));
    }),
    { numRuns: 15 },
  );
});

/** A box of parts has functions that are made with it: what it says counts. */
function plain({ outcomes }: ReturnType<typeof read>): unknown {
  return outcomes.map((outcome) =>
    outcome.state === "sized"
      ? [outcome.quantity, outcome.said, outcome.sized.kind.name, JSON.stringify(outcome.sized.assembly)]
      : outcome.state === "problem"
        ? [outcome.error.message, outcome.unmeasured]
        : outcome,
  );
}
