import { cautionsOf } from "../../src/board/cautions";
import { settingsOf } from "../../src/settings/settingsOf";
import { sizeRow } from "../../src/item/sizeItem";

function said(text: string, kind = "tray"): readonly string[] {
  const row = sizeRow({ height: 150, width: 100, depth: 30, weight: 0.2, enclosure: kind }, settingsOf([text]))!;
  return cautionsOf({ ...row, hazard: "", heightAsTyped: "" }, row.settings);
}

const PAT = "not known to pass ISO 18916 (PAT); ask the supplier for the test report, or take a stock that passes";

test.each<[string, string, readonly string[]]>([
  ["paper, with a stain", "tray", []],
  ["whalebone", "tray", []],
  [
    "Albumen photographs",
    "tray",
    [`photograph beside conservation board 2, folding card 0.4, lining paper and the adhesive: ${PAT}`],
  ],
  ["glass negative", "four-flap wrapper", [`photograph beside folding card 0.4: ${PAT}`]],
  [
    "silk banner",
    "four-flap wrapper",
    [
      "wool, silk, leather, cyanotype or dye transfer beside folding card 0.4, which is buffered: common practice: unbuffered; ask a conservator, and the supplier for the pH",
    ],
  ],
])("%s in a %s", (material, kind, cautions) => {
  expect(said(`material=${material}`, kind)).toEqual(cautions);
});

test("stocks that pass, unbuffered, draw no caution beside a photograph or silk", () => {
  for (const material of ["photograph", "silk", "cyanotype"])
    expect(said(`material=${material}; wrapper card=unbuffered card 0.5`, "four-flap wrapper")).toEqual([]);
});

test("anything beside board of permanence none is told, unless a lining lies between", () => {
  const NONE =
    "the item lies beside grey board 2, of permanence none, without a lining between: line it, or ask the supplier for board after ISO 16245";
  expect(said("wall board=grey board 2; lining=none")).toEqual([NONE]);
  expect(said("wall board=grey board 2")).toEqual([]);
});
