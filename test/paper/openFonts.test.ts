import type { FontLoader } from "../../src/paper/fonts";
import { fontOfFile } from "../../src/paper/openFonts";
import { fromPackages } from "./paperTools";

test("a document's letters are its own, whatever was printed before in the same font", async () => {
  const letters = async (text: string) => (await fontOfFile("hebrew", fromPackages)).layout(text).glyphs;
  // One glyph draws a space and a space at which no line ends; the text of a file must give back what was written.
  const [[space], [noBreak]] = [await letters(" "), await letters("\u00a0")];
  expect(noBreak!.id).toBe(space!.id);
  expect([space!.codePoints, noBreak!.codePoints]).toEqual([[0x20], [0xa0]]);
});

test("what is laid out is the same when it is asked for again, though the first who asked changed it", async () => {
  const font = await fontOfFile("regular", fromPackages);
  const positions = () => font.layout("AVA").positions;
  const whole = (await fontOfFile("regular", fromPackages)).layout("AVA").positions.map(({ xAdvance }) => xAdvance);
  expect(positions().map(({ xAdvance }) => xAdvance)).toEqual(whole);
  // The PDF scales what it is given.
  for (const position of positions()) position.xAdvance = 0;
  expect(positions().map(({ xAdvance }) => xAdvance)).toEqual(whole);
});

test("a file is read once for all documents, and again after it could not be read", async () => {
  let asked = 0;
  const load: FontLoader = async (name) => {
    if (++asked === 1) throw new Error("no connection");
    return fromPackages(name);
  };
  await expect(fontOfFile("regular", load)).rejects.toThrow("no connection");
  await fontOfFile("regular", load);
  await fontOfFile("regular", load);
  expect(asked).toBe(2);
});
