import { yearFit } from "../../src/board/yearFit";
import { X, Y, Z } from "../../src/enclosure/space";
import { InputError } from "../../src/measure/errors";
import { settingsOf } from "../../src/settings/settingsOf";
import { EVERY_STRUCTURE } from "../enclosure/everyEnclosure";
import { fitsOverTheYear } from "../suites/fitsOverTheYear";
import { sized } from "./itemLoads";

const AXES = [
  ["height", Y],
  ["width", X],
  ["depth", Z],
] as const;

describe("by hand", () => {
  // In still air, with errors of .1 in cutting, .2 in measuring and .01 in caliper: what is not in doubt is exact.
  const ERRORS =
    "expansion along=none; expansion across=none; item expansion=none; measuring error=0.2; cutting error=0.1; caliper tolerance=0.01";
  test.each([
    // Worst case: cut, measure, and as many calipers as stand in the chain, by kind.
    ["tray", "construction=around base", [2, 2, 2], [0, 0, 1]],
    ["tray", "construction=flanged base", [2, 2, 2], [0, 0, 1]],
    ["tray", "construction=on base", [2, 2, 2], [2, 2, 0]],
    ["tray", "wall layers=2", [2, 2, 2], [2, 2, 0]],
    ["tray", "wall layers=2; construction=on base", [2, 2, 2], [4, 4, 0]],
    // A base of 3 under walls of 1.5 is one caliper, and two walls of 3 on a base of 1.5 are two.
    ["tray", "construction=around base; base board=3; wall board=1.5", [2, 2, 2], [0, 0, 1]],
    ["tray", "construction=on base; base board=1.5; wall board=3", [2, 2, 2], [2, 2, 0]],
    ["lidded box", "", [2, 2, 2], [0, 0, 1]],
    ["three-tray box", "construction=on base", [2, 2, 2], [2, 2, 0]],
    ["slipcase", "", [1, 0, 1], [2, 1, 0]],
    ["slipcase", "construction=around base; base board=1; wall board=3", [1, 0, 1], [0, 0, 2]],
    ["clamshell box", "", [2, 2, 2], [0, 0, 1]],
    ["clamshell box", "construction=on base", [2, 2, 2], [2, 1, 0]],
    ["folded tray", "fold=cut", [2, 2, 2], [0, 0, 0]],
    // A crease is half a board off the inside; two tabs lie inside the side walls.
    ["folded tray", "fold=crease", [2, 2, 2], [1, 3, 0.5]],
    ["four-flap wrapper", "", [1, 1, 1], [1, 1, 1]],
  ])("%s %s", (kind, text, plays, calipers) => {
    // 40.25 + .5 covering + 2 is a whole step; so is the rest.
    const { assembly, item, settings } = sized(
      [300, 210, 40],
      kind,
      undefined,
      [ERRORS, text].filter((each) => each !== "").join("; "),
    );
    AXES.forEach(([, axis], at) => {
      const { nominal, least, greatest } = yearFit(assembly, item, axis, settings);
      // The slipcase's width and depths of half a covering are rounded up to the step of .5.
      expect(nominal - plays[at]!).toBeGreaterThanOrEqual(-1e-9);
      expect(nominal - plays[at]!).toBeLessThan(0.5);
      const play = 0.1 + 0.2 + 0.01 * calipers[at]!;
      expect(least).toBeCloseTo(nominal - play, 9);
      expect(greatest).toBeCloseTo(nominal + play, 9);
    });
  });

  test("the base grows by its grain: along .04, across .15 mm in a metre for each %RH", () => {
    const air =
      "measuring error=none; cutting error=none; caliper tolerance=none; item expansion=none; humidity least=50; humidity greatest=60";
    const greatest = (hwd: [number, number, number], kind: string, axis: typeof X | typeof Y) => {
      const { assembly, item, settings } = sized(hwd, kind, undefined, air);
      return yearFit(assembly, item, axis, settings).greatest;
    };
    // 303 x .0004 along and 213 x .0015 across: a portrait tray, and a landscape one turned.
    expect(greatest([300, 210, 40], "tray", Y)).toBeCloseTo(2 + 0.1212, 9);
    expect(greatest([300, 210, 40], "tray", X)).toBeCloseTo(2 + 0.3195, 9);
    expect(greatest([210, 300, 40], "tray", X)).toBeCloseTo(2 + 0.1212, 9);
    // A clamshell's grain stays parallel to the spine.
    expect(greatest([210, 300, 40], "clamshell box", X)).toBeCloseTo(2 + 0.4545, 9);
    // A folded blank has its grain along its longer side.
    expect(greatest([300, 210, 40], "folded tray", Y)).toBeCloseTo(2 + 0.1212, 9);
    expect(greatest([300, 210, 40], "folded tray", X)).toBeCloseTo(2 + 0.3195, 9);
    // Every panel of a wrapper spans across the grain: creases 301.4 apart.
    expect(greatest([300, 210, 40], "four-flap wrapper", Y)).toBeCloseTo(1 + 0.4521, 9);
  });

  test("humidity out of order is refused", () => {
    const { assembly, item } = sized([300, 210, 40], "tray");
    const range = () => yearFit(assembly, item, Y, settingsOf(["humidity least=55"]));
    expect(range).toThrow(InputError);
    expect(range).toThrow(
      "humidity: got 55, 50 and 65 %RH; give humidity least, when made and greatest in rising order",
    );
  });
});

fitsOverTheYear(EVERY_STRUCTURE);
