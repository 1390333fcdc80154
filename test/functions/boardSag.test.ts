import { cell, refusal } from "./cell";

// By hand, w = alpha q a^4 / D: alpha .00406 (square) and .01013 (twice as long) of Timoshenko and Woinowsky-Krieger,
// Table 8; E 1 GPa both ways, board 2 mm: D = 1000 x 8 / 10.92 = 732.6 N mm.
const PLAIN = "covering allowance=none; fit=none; modulus along=1; modulus across=1";

/** The sag of a plate that only rests on its edges, from the springing of one whose walls are glued to it. */
const flat = (w: number, t: number) => 2 * (w + (0.4 * w ** 3) / t ** 2);

describe("BASE.SAG", () => {
  test.each([
    // 9.80665 / 40,000 x 200^4 x .00406 / 732.6
    [200, 200, 1, "", 2.174],
    [200, 200, 2.5, "", 5.435],
    // 9.80665 / 80,000 x 200^4 x .01013 / 732.6
    [400, 200, 1, "", 2.712],
    [200, 400, 1, "", 2.712],
  ])("%d x %d under %d kg%s: %d mm, within 1 %%", async (height, width, weight, text, sag) => {
    const got = (await cell("BASE.SAG", height, width, 30, weight, "tray", "2 mm", PLAIN + text)) as number;
    // Springing: w + 0.4 w^3 / t^2 is half of it.
    expect(Math.abs(flat(got, 2) / sag - 1)).toBeLessThan(0.01);
  });

  test("a board by name, by caliper in any unit, and one that is not in stock", async () => {
    const sag = (board: string | number, ...settings: string[]) =>
      cell("BASE.SAG", 200, 200, 30, 1, "tray", board, PLAIN, ...settings) as Promise<number>;
    const two = await sag("conservation board 2");
    for (const same of [2, "2", "2 mm", "2.0", "Conservation  Board 2", "0.2 cm"]) expect(await sag(same)).toBe(two);
    expect(flat(await sag("80 pt"), 2.032)).toBeCloseTo(flat(two, 2) * (2 / 2.032) ** 3, 7);
    expect(flat(await sag(4), 4)).toBeCloseTo(flat(two, 2) / 8, 7);
    // An inch workbook: the answer in inches.
    expect(
      await cell("BASE.SAG", "200 mm", "200 mm", "30 mm", "1 kg", "tray", "2 mm", `${PLAIN}; unit=in; round to=none`),
    ).toBeCloseTo(two / 25.4, 8);
  });

  test("every stock board, a row each: the sag falls with the cube of the caliper", async () => {
    const [headings, ...rows] = (await cell("BASE.SAG", 200, 200, 30, 1, "tray", "all", PLAIN)) as [string, number][];
    expect(headings).toEqual(["board", "sag"]);
    const solid = (kind: string) => [1.5, 2, 2.5, 3].map((caliper) => `${kind} board ${caliper}`);
    expect(rows.map(([board]) => board)).toEqual([...solid("conservation"), "corrugated board 1.6", ...solid("grey")]);
    const two = flat(rows[1]![1], 2);
    rows.forEach(([board, sag]) => {
      const t = Number(board.split(" ").at(-1));
      expect(flat(sag, t)).toBeCloseTo(two * (2 / t) ** 3, 7);
    });
  });

  test("moduli of the stock row come before those of the settings", async () => {
    const table = [
      ["stock", "material", "caliper", "modulus along", "modulus across"],
      ["own", "board", 2, 4, 4],
      ["none", "board", 3, "", ""],
    ];
    const [, [, own], [, none]] = (await cell("BASE.SAG", 200, 200, 30, 1, "tray", "all", PLAIN, table)) as [
      unknown,
      [string, number],
      [string, number],
    ];
    const plain = (await cell("BASE.SAG", 200, 200, 30, 1, "tray", "2 mm", PLAIN)) as number;
    expect(flat(own, 2)).toBeCloseTo(flat(plain, 2) / 4, 7);
    expect(flat(none, 3)).toBeCloseTo(flat(plain, 2) * (2 / 3) ** 3, 7);
  });

  test("a clamshell's tray is glued to its case: its thickness is b + q", async () => {
    const sags = async (text: string) => {
      const table = (await cell("BASE.SAG", 200, 200, 30, 1, "clamshell box", "all", `${PLAIN}; ${text}`)) as [
        string,
        number,
      ][];
      return table.slice(1, 5).map(([, sag]) => sag);
    };
    const thickness = [
      ["case board=3", [4.5, 5, 5.5, 6]],
      // The case is of the wall board where it is not named, and of the same board again where that is auto.
      ["wall board=2", [3.5, 4, 4.5, 5]],
      ["wall board=auto; weight=0.3", [3, 4, 5, 6]],
    ] as const;
    const [anchor] = await sags("case board=3");
    for (const [text, thick] of thickness)
      (await sags(text)).forEach((sag, at) =>
        expect(flat(sag, thick[at]!) / flat(anchor!, 4.5)).toBeCloseTo((4.5 / thick[at]!) ** 3, 6),
      );
  });

  test("an open spine edge sags more than a tray of four walls: of a square of nu .3, E alike, 3.17 times at a free edge", async () => {
    const settings = `${PLAIN}; fit width=none`;
    const slipcase = (await cell("BASE.SAG", 200, 200, 30, 1, "slipcase", "2 mm", settings)) as number;
    const tray = (await cell("BASE.SAG", 200, 200, 30, 1, "tray", "2 mm", settings)) as number;
    // Timoshenko and Woinowsky-Krieger, three edges supported and one free, b/a = 1: .01286, from memory; against .00406.
    expect(flat(slipcase, 2) / flat(tray, 2)).toBeCloseTo(0.01286 / 0.00406, 1);
  });

  test("turning the grain: an item that lies landscape sags as the portrait one does", async () => {
    const sag = (height: number, width: number) =>
      cell("BASE.SAG", height, width, 30, 1, "tray", "2 mm", "covering allowance=none; fit=none");
    expect(await sag(300, 200)).toBe(await sag(200, 300));
  });

  test("no answer without a weight or a base board", async () => {
    expect(await refusal("BASE.SAG", 200, 200, 30, 0, "tray", "all")).toBe(
      "#N/A weight: a sag follows from the weight; give it, or set item density",
    );
    expect(await refusal("BASE.SAG", 200, 200, 30, 1, "folded tray", "all")).toBe(
      "#N/A enclosure: a folded tray has no base board that sags",
    );
    expect(await refusal("BASE.SAG", 200, 200, 30, 1, "four-flap wrapper", "2 mm")).toBe(
      "#N/A enclosure: a four-flap wrapper has no base board that sags",
    );
  });

  const BOARDS =
    "give conservation board 1.5, conservation board 2, conservation board 2.5, conservation board 3, corrugated board 1.6, grey board 1.5, grey board 2, grey board 2.5, grey board 3, a caliper such as 2 mm or all";
  test.each([
    [
      "conservaton board 2",
      `got "conservaton board 2"; ${BOARDS}; did you mean conservation board 2, conservation board 3 or conservation board 2.5?`,
    ],
    ["", `got a blank; ${BOARDS}`],
    ["thick", `got "thick"; ${BOARDS}`],
    [80, `got "80"; ${BOARDS}`],
    ["0.1 mm", `got "0.1 mm"; ${BOARDS}`],
    ["-2 mm", `got "-2 mm"; ${BOARDS}`],
    ["folding card 0.4", `got "folding card 0.4"; ${BOARDS}`],
    ["fit=loose", 'got settings; put "all" before them'],
  ])("board %p is refused", async (board, message) => {
    expect(await refusal("BASE.SAG", 200, 200, 30, 1, "tray", board)).toBe(`#VALUE! board: ${message}`);
  });
});

describe("BOARD.MODULUS: E = F L^3 / (48 I sag)", () => {
  // .2 kg on 200 mm, strip 30 x 2, I = 20: 1.96133 x 8,000,000 / (48 x 20 x 5) = 3268.88 MPa.
  const GPA = 3.268883333;
  test.each([
    [[200, 30, 2, 0.2, 5], ""],
    [["200 mm", "3 cm", "2 mm", "200 g", "0.5 cm"], ""],
    [[20, 3, 0.2, 0.2, 0.5], "unit=cm"],
    [["200 mm", "30 mm", "2 mm", "200 g", "5 mm"], "unit=in"],
  ])("%j %s", async ([length, width, caliper, load, sag], settings) => {
    expect(await cell("BOARD.MODULUS", length, width, caliper, load, sag, settings)).toBe(GPA);
  });

  test("inches, pounds and points: 8 in, 1 in, 80 pt, 1/2 lb, 1/4 in", async () => {
    // .22679618 x 9.80665 = 2.22411 N; 203.2^3; I = 25.4 x 2.032^3 / 12 = 17.7593; 6.35: / 48 = 3447.4 MPa
    const got = (await cell("BOARD.MODULUS", 8, 1, "80 pt", 0.5, 0.25, "unit=in")) as number;
    expect(got).toBeCloseTo((2.2241108 * 203.2 ** 3) / (48 * 17.75926 * 6.35) / 1000, 4);
    expect(await cell("BOARD.MODULUS", 8, 1, 0.08, 0.5, "1/4 in", "unit=in")).toBe(got);
  });

  test("blank: empty text, so that a column of tests can be filled down", async () => {
    for (const blank of [0, "", null, undefined] as const)
      expect(await cell("BOARD.MODULUS", blank, blank, blank, blank, blank)).toBe("");
  });

  test.each([
    [["long", 30, 2, 0.2, 5], 'length: got "long"; give a length such as 40, 40 mm or 1 9/16 in'],
    [[-200, 30, 2, 0.2, 5], "length: got -200; give a length above zero such as 40, 40 mm or 1 9/16 in"],
    [[200, 0, 2, 0.2, 5], "width: got 0; give a length above zero such as 40, 40 mm or 1 9/16 in"],
    [[200, 30, "", 0.2, 5], "caliper: got a blank; give a length such as 2, 2 mm or 80 pt"],
    [[200, 30, 2, "", 5], "load: got a blank; give a mass such as 1.2, 850 g or 2 lb 3 oz"],
    [[200, 30, 2, -1, 5], "load: got -1; give a mass above zero such as 1.2, 850 g or 2 lb 3 oz"],
    [[200, 30, 2, "2 mm", 5], 'load: got "2 mm"; give a mass such as 1.2, 850 g or 2 lb 3 oz'],
    [[200, 30, 2, 0.2, undefined], "sag: got a blank; give a length such as 40, 40 mm or 1 9/16 in"],
    [[200, 30, 2, 0.2, { error: "#N/A" }], 'sag: got "#N/A"; give a length such as 40, 40 mm or 1 9/16 in'],
  ])("%j: %s", async ([length, width, caliper, load, sag], message) => {
    expect(await refusal("BOARD.MODULUS", length, width, caliper, load, sag)).toBe(`#VALUE! ${message}`);
  });

  test("what it answers goes into the settings, and the base sags by it", async () => {
    const [along, across] = (await Promise.all([5, 9].map((sag) => cell("BOARD.MODULUS", 200, 30, 2, 0.2, sag)))) as [
      number,
      number,
    ];
    const measured = [
      ["setting", "value"],
      ["modulus along", along],
      ["modulus across", across],
    ];
    const settings = (await cell("SETTINGS", measured)) as (string | number)[][];
    expect(settings.find(([name]) => name === "modulus along")?.[1]).toBe(along);
    const sag = (...given: (string | readonly (readonly (string | number)[])[])[]) =>
      cell("BASE.SAG", 300, 200, 30, 1, "tray", "2 mm", ...given) as Promise<number>;
    const doubled = `modulus along=${2 * along}; modulus across=${2 * across}`;
    expect(flat(await sag(measured), 2)).toBeCloseTo(2 * flat(await sag(doubled), 2), 7);
  });
});
