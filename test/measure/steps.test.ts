import { readHeading } from "../../src/headings/headings";
import { wordsOf } from "../../src/headings/lexicon";
import { readDimensions } from "../../src/measure/readDimensions";
import { readLength } from "../../src/measure/readLength";
import { readMass } from "../../src/measure/readMass";
import { readOrder } from "../../src/measure/placeDimensions";
import { isDateFormat } from "../../src/workbook/sheetValue";
import { readCsv } from "../../src/workbook/readCsv";
import { lettersLookedAt } from "./steps";

/** Every function that reads a text of the user, and a figure of how much of it a person would write. */
const READERS: Readonly<Record<string, readonly [read: (text: string) => unknown, usual: number]>> = {
  readLength: [(text) => readLength(text, { argument: "height", unit: "mm" }), 500],
  readMass: [(text) => readMass(text, { argument: "weight", unit: "kg" }), 500],
  readDimensions: [(text) => readDimensions(text, { argument: "text", unit: "cm" }), 1_000],
  readOrder: [readOrder, 500],
  readHeading: [(text) => readHeading(text), 250],
  wordsOf: [wordsOf, 250],
  isDateFormat: [isDateFormat, 120],
  readCsv: [(text) => readCsv(new TextEncoder().encode(`id,height\n${text}\n`)), 1_000],
};

const PIECES = [
  ...["H 1\n", "a.", "x\n", "1 x ", "H 1 ; ", "(", "( ", "[", "(1 cm) ", "a: ", "overall ", "mm ", " mm", "h x "],
  ...["9", "1 ", "1/", "²", "½", "'", '"', " ", "\t", ".", ",", "-", "1-", "1' ", "2 lb ", "\u200c", "é", "x", "or "],
];

/** Of a text twice as long, little more than twice the work; what is too long is not looked at. */
const MOST_GROWTH = 2.6;
const A_FEW = 2_000;
/** Patterns of `plainText` look one after the other. */
const LOOKS_A_LETTER = 16;

test.each(Object.entries(READERS))(
  "%s looks at each letter of a long text a few times, never again and again",
  (_, of) => {
    const [read, usual] = of;
    for (const piece of PIECES) {
      const text = (letters: number): string => piece.repeat(Math.ceil(letters / piece.length)).slice(0, letters);
      const [once, twice] = [usual, 2 * usual].map((letters) => lettersLookedAt(() => read(text(letters))));
      const most = Math.max(MOST_GROWTH * once!, A_FEW + 2 * usual * LOOKS_A_LETTER);
      expect([piece, twice! <= most ? "few" : `${once} then ${twice}`]).toEqual([piece, "few"]);
    }
  },
);

test.each(["readLength", "readMass", "readDimensions", "readHeading", "wordsOf", "isDateFormat"])(
  "%s looks no more at a text of a million letters than at one as long as it takes",
  (name) => {
    const [read] = READERS[name]!;
    for (const piece of PIECES) {
      const looked = lettersLookedAt(() => read(piece.repeat(1_000_000 / piece.length)));
      expect([piece, looked < 200_000 ? "few" : looked]).toEqual([piece, "few"]);
    }
  },
);
