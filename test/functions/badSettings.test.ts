import { kindWords } from "../enclosure/kindWords";
import type { Argument } from "../runtime/marshal";
import { cell, ITEM, refusal } from "./cell";

const told = (...settings: readonly Argument[]): Promise<string> =>
  refusal("INSIDE", ...ITEM, "tray", "all", ...settings);

const TEXT = "give a text such as fit=loose; wall board=3 mm";
const RANGE = "or a range with the headings setting and value, or a stock table with its headings";
const NAME = "give the name of a setting";
const ELSE = "ENC.SETTINGS() lists them";

describe("an argument that is no settings", () => {
  test.each([
    ["a word", "loose", `settings: got "loose"; ${TEXT}; ${RANGE}`],
    ["a number", 5, `settings: got 5; ${TEXT}; ${RANGE}`],
    ["a date serial", 45234, `settings: got 45234; ${TEXT}; ${RANGE}`],
    ["TRUE", true, `settings: got TRUE; ${TEXT}; ${RANGE}`],
    ["FALSE", false, `settings: got FALSE; ${TEXT}; ${RANGE}`],
    ["an error", { error: "#REF!" }, "settings: got the error #REF!; mend that cell, or clear it"],
    ["a selector too many", "all", `settings: got "all"; ${TEXT}; ${RANGE}`],
    [
      "a wide range without headings",
      [
        ["conservation board", "board", 2],
        ["card", "card", 0.4],
      ],
      "settings: got a range of 3 columns without headings that are known; give two columns, or columns headed " +
        "setting and value; or a stock table with its heading row, such as Stock[#All]",
    ],
    [
      "a column of texts",
      [["fit=loose"], ["unit=in"]],
      "settings: got a range of 1 column without headings that are known; give two columns, or columns headed " +
        "setting and value; or a stock table with its heading row, such as Stock[#All]",
    ],
  ])("%s", async (_what, argument, message) => {
    expect(await told(argument)).toBe(`#VALUE! ${message}`);
    expect(await told("fit=snug", argument, [["unit", "mm"]])).toBe(`#VALUE! ${message}`);
  });
});

describe("a name that is no setting", () => {
  test.each([
    ["misspelt in a text", "fitt=loose", `settings: got "fitt"; ${NAME}; did you mean fit?`],
    ["misspelt in a range", [["turn on", 15]], `settings: got "turn on"; ${NAME}; did you mean turn-in?`],
    ["nothing near", "zebra=blue", `settings: got "zebra"; ${NAME}; ${ELSE}`],
    ["no name in a text", "=loose", `settings: got a blank; ${NAME}; ${ELSE}`],
    [
      "no name in a range",
      [["", "loose"]],
      'settings: got the value "loose" without a setting; name the setting beside it',
    ],
    ["a number for a name", [[5, 3]], `settings: got 5; ${NAME}; ${ELSE}`],
    ["TRUE for a name", [[true, 3]], `settings: got TRUE; ${NAME}; ${ELSE}`],
    ["an error for a name", [[{ error: "#N/A" }, 3]], "settings: got the error #N/A; mend that cell, or clear it"],
    [
      "no equals sign after a semicolon",
      "fit=loose; snug",
      'settings: got "snug"; write name=value, such as fit=loose; wall board=3 mm',
    ],
    [
      "items put among the settings",
      [
        [300, 210],
        [280, 190],
      ],
      `settings: got 300; ${NAME}; ${ELSE}`,
    ],
  ])("%s", async (_what, argument, message) => {
    expect(await told(argument)).toBe(`#VALUE! ${message}`);
  });
});

const FITS = "give snug, standard, loose, a length such as 2 or 1/16 in, or none";
const LENGTH = "give a length such as 2, 2 mm or 1/16 in, or none";
const ALLOWANCE = "give auto, a length such as 1 or 1/32 in, or none";
const TURN_IN = "give auto or a length above zero such as 15, 15 mm or 5/8 in";
const BOARD = "give a board or card of the stock table, or a caliper from 0.3 to 10 mm, such as 2, 2 mm or 80 pt";
const CARD = BOARD.replace("0.3", "0.15");
const CONSTRUCTIONS = "give around base, on base or flanged base";

/** Setting, value, what follows `got`; as a text and as a cell of a range alike. */
const WRONG_VALUES = [
  ["unit", "ft", '"ft"; give mm, cm or in'],
  ["unit", "inch", '"inch"; give mm, cm or in'],
  ["unit", 25.4, "25.4; give mm, cm or in"],
  ["shop unit", "pt", '"pt"; give mm, cm or in'],
  ["fit", "lose", `"lose"; ${FITS}; did you mean loose?`],
  ["fit", -1, `-1; ${FITS}`],
  ["fit", "2 kg", `"2 kg"; ${FITS}`],
  ["fit height", "tight", `"tight"; ${FITS}`],
  ["fit depth", 1e9, `1000000000; ${FITS}; write its unit, such as 5.2 m, if it is meant`],
  ["covering allowance", -0.5, `-0.5; ${ALLOWANCE}`],
  ["covering allowance", "thin", `"thin"; ${ALLOWANCE}`],
  ["cushion base", "1,234", `"1,234"; ${LENGTH}; write 1234 or 1.234`],
  ["cushion sides", 45234, `45234; ${LENGTH}; may be a date: type '3/8 in`],
  [
    "cushion top",
    "10 3/8 mm",
    `"10 3/8 mm"; ${LENGTH}; fractions other than halves and quarters are read in inches only`,
  ],
  ["rests on", "side", '"side"; give back, foot or edge'],
  ["construction", "on bse", `"on bse"; ${CONSTRUCTIONS}; did you mean on base?`],
  ["construction", "boxed", `"boxed"; ${CONSTRUCTIONS}`],
  ["through", "sides", '"sides"; give side or head; did you mean side?'],
  ["wall layers", 3, "3; give 1 or 2"],
  ["wall layers", 1.5, "1.5; give 1 or 2"],
  ["wall layers", "two", '"two"; give 1 or 2'],
  ["end cards", "maybe", '"maybe"; give yes or no'],
  [
    "wall board",
    "conservaton board 2",
    `"conservaton board 2"; ${BOARD}, or auto; did you mean conservation board 2, conservation board 3 or conservation board 2.5?`,
  ],
  ["wall board", 20, `20; ${BOARD}, or auto`],
  ["wall board", "20", `"20"; ${BOARD}, or auto`],
  ["wall board", "0.1 mm", `"0.1 mm"; ${BOARD}, or auto`],
  ["wall board", "book cloth", `"book cloth"; ${BOARD}, or auto`],
  ["wall board", true, `TRUE; ${BOARD}, or auto`],
  ["base board", -2, `-2; ${BOARD}, or auto`],
  ["flange card", "0.1", `"0.1"; ${CARD}`],
  ["flange card", "auto", `"auto"; ${CARD}`],
  ["card trim", "ten", `"ten"; ${LENGTH}`],
  ["covering", "bok cloth", '"bok cloth"; give a name of the stock table, or none; did you mean book cloth?'],
  ["covering", 2, "2; give a name of the stock table, or none"],
  ["covering", "2", '"2"; give a name of the stock table, or none'],
  ["lining", "silk", '"silk"; give a name of the stock table, or none'],
  ["turn-in", "none", `"none"; ${TURN_IN}`],
  ["turn-in", "0 mm", `"0 mm"; ${TURN_IN}`],
  ["turn-in", "80 pt", `"80 pt"; ${TURN_IN}; pt is read for calipers only`],
  ["inside turn", "half", '"half"; give auto, full, or a length such as 20 or 3/4 in'],
  ["cover style", "strips", '"strips"; give strip or one piece; did you mean strip?'],
  ["round to", "0.001 mm", '"0.001 mm"; give a step from 0.01 mm such as 0.5, 0.5 mm or 1/32 in, or none'],
  ["round to", "half", '"half"; give a step from 0.01 mm such as 0.5, 0.5 mm or 1/32 in, or none'],
  ["weight", "heavy", '"heavy"; give a weight such as 1.2, 850 g or 2 lb, or none'],
  ["weight", "12 mm", '"12 mm"; give a weight such as 1.2, 850 g or 2 lb, or none'],
  ["weight", -1, "-1; give a weight such as 1.2, 850 g or 2 lb, or none"],
  ["item density", "0x20", '"0x20"; give kilograms to the cubic metre, or none'],
  ["modulus along", "stiff", '"stiff"; give a number of GPa from 0.001 to 1000, such as 2'],
  ["modulus across", -1, "-1; give a number of GPa from 0.001 to 1000, such as 2"],
  ["modulus along", 2e9, "2000000000; give a number of GPa from 0.001 to 1000, such as 2"],
  ["lift limit", "far", '"far"; give a weight such as 23 or 50 lb'],
  ["edge trim", -5, `-5; ${LENGTH}`],
  ["piece gap", "saw", `"saw"; ${LENGTH}`],
  ["contingency", -10, "-10; give a percentage above zero such as 10, or none"],
  ["contingency", "ten", '"ten"; give a percentage above zero such as 10, or none'],
  ["text unit", "yd", '"yd"; give mm, cm, m, in or ft'],
] as const;

describe("a value that its setting does not take", () => {
  test.each(WRONG_VALUES)("%s: %p", async (setting, value, message) => {
    expect(await told([[setting, value]])).toBe(`#VALUE! ${setting}: got ${message}`);
    if (typeof value === "string") expect(await told(`${setting}=${value}`)).toBe(`#VALUE! ${setting}: got ${message}`);
  });

  test("an error in a range names the setting beside it; in a column that is not read it does no harm", async () => {
    const headed = (value: Argument, note: Argument) =>
      [
        ["setting", "value", "note"],
        ["fit", value, note],
      ] as Argument;
    expect(await told(headed({ error: "#N/A" }, ""))).toBe(
      "#VALUE! fit: got the error #N/A; mend that cell, or clear it",
    );
    expect(await cell("INSIDE", ...ITEM, "tray", "height", headed("snug", { error: "#N/A" }))).toBe(302);
  });

  test("a value overridden later is not read", async () => {
    expect(await cell("INSIDE", ...ITEM, "tray", "height", [["fit", "lose"]], "fit=snug")).toBe(302);
  });
});

describe("an option of other kinds in the row's own text", () => {
  test.each([
    ["tray", "neck", "12", "neck"],
    ["slipcase", "end cards", "yes", "endCards"],
    ["tray", "case board", "3", "caseBoard"],
    ["tray", "flaps", "1 / 1", "flaps"],
  ] as const)("%s, %s=%s", async (enclosure, name, value, key) => {
    const users = kindWords(({ options }) => options.includes(key));
    expect(await refusal("INSIDE", ...ITEM, enclosure, "all", `${name}=${value}`)).toBe(
      `#VALUE! ${name}: got a value for a ${enclosure}, which has no use for it; give it for a ${users}; ` +
        "or leave it out of this row",
    );
  });
});

describe("settings of one kind alone", () => {
  test.each([
    ["folded tray", "fold=bend", 'fold: got "bend"; give cut or crease'],
    ["folded tray", "joint strips=four", 'joint strips: got "four"; give yes, no, or a name of the stock table'],
    ["lidded box", "lid depth=deep", 'lid depth: got "deep"; give auto, full, or a length such as 30 or 1 1/4 in'],
    ["lidded box", "lid reveal=-3", `lid reveal: got "-3"; ${LENGTH}`],
    ["lidded box", "lid clearance=tight", `lid clearance: got "tight"; ${LENGTH}`],
    [
      "lidded box",
      "lid construction=off base",
      `lid construction: got "off base"; ${CONSTRUCTIONS}; did you mean on base?`,
    ],
    ["three-tray box", "neck=long", 'neck: got "long"; give auto or a length such as 10 or 3/8 in'],
    ["three-tray box", "nest clearance=-1", `nest clearance: got "-1"; ${LENGTH}`],
    ["clamshell box", "square=round", `square: got "round"; ${LENGTH}`],
    [
      "clamshell box",
      "joint=atuo",
      'joint: got "atuo"; give auto or a length such as 5 or 3/16 in; did you mean auto?',
    ],
    ["clamshell box", "hinge lap=0", 'hinge lap: got "0"; give a length above zero such as 25 or 1 in'],
    ["clamshell box", "case board=thick", `case board: got "thick"; ${BOARD}, or auto`],
    ["four-flap wrapper", "flaps=1", 'flaps: got "1"; give two fractions of the panel from 0.1 to 1, such as 1 / 0.5'],
    [
      "four-flap wrapper",
      "flaps=1 / 2",
      'flaps: got "1 / 2"; give two fractions of the panel from 0.1 to 1, such as 1 / 0.5',
    ],
    [
      "four-flap wrapper",
      "flap relief=some",
      'flap relief: got "some"; give a length such as 2, 2 mm or 1/16 in, or none',
    ],
    ["tray", "lining order=first", 'lining order: got "first"; give auto, before or after'],
    ["four-flap wrapper", "wrapper card=thick", `wrapper card: got "thick"; ${CARD}`],
  ])("%s, %s", async (enclosure, text, message) => {
    expect(await refusal("INSIDE", ...ITEM, enclosure, "all", text)).toBe(`#VALUE! ${message}`);
  });
});
