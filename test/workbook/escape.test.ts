import fc from "fast-check";
import { SaxesParser } from "saxes";
import { escapeColumnName, escapeText, unescapeText } from "../../src/workbook/escape";

/** Any text that a cell can hold: control letters, halves of a pair, markup, and what only looks like an escape. */
const anyText = fc.array(
  fc.oneof(
    fc.string({ unit: "binary" }),
    fc.integer({ min: 0, max: 0xffff }).map((code) => String.fromCharCode(code)),
    fc.constantFrom("_x", "_x000D_", "_x005F_", "_xldudf_ENC_", '"', "&amp;", "]]>", "<b>", "\r\n", "\t"),
  ),
  { maxLength: 8 },
);

function read(xml: string): { text: string; name: string } {
  let text = "";
  let name = "";
  const parser = new SaxesParser();
  parser.on("error", (error) => {
    throw error;
  });
  parser.on("text", (piece) => (text += piece));
  parser.on("opentag", (tag) => (name = tag.attributes["name"] ?? ""));
  parser.write(xml).close();
  return { text: unescapeText(text), name: unescapeText(name) };
}

test("any text reads back as it was, in an element and as the name of a table column", () => {
  fc.assert(
    fc.property(anyText, (pieces) => {
      const text = pieces.join("");
      expect(read(`<t name="${escapeColumnName(text)}">${escapeText(text)}</t>`)).toEqual({ text, name: text });
    }),
    { numRuns: 2000 },
  );
});

test.each([
  [`IF(A2="","",B2&"x")`, `IF(A2="","",B2&amp;"x")`],
  ["a < b", "a &lt; b"],
  ["_xldudf_ENC_OUTSIDE(A2)", "_xldudf_ENC_OUTSIDE(A2)"],
  ["_x0041_", "_x005F_x0041_"],
  ["a\rb", "a_x000D_b"],
  ["\ud83d\udce6", "\ud83d\udce6"],
  ["\ud83d", "_xD83D_"],
])("%j stands as %j", (text, written) => expect(escapeText(text)).toBe(written));
