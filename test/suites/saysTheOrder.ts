import { CLOSURE_PIECES } from "../../src/covering/closurePieces";
import { CUSHION_PIECES } from "../../src/covering/cushionPieces";
import { partList } from "../../src/covering/partList";
import { stepsOf } from "../../src/covering/stepsOf";
import type { Assembly } from "../../src/enclosure/assembly";
import type { Kind } from "../../src/enclosure/kind";
import { CAUTIONS, type Step } from "../../src/enclosure/step";
import type { SettledSettings } from "../../src/settings/schema";
import { assemblyOf, titled, type Structure } from "../enclosure/everyEnclosure";
import { book } from "../enclosure/sizing";

/** An ordinary item, a deep one, one of which turn-ins leave little. */
const ITEMS = [book(300, 210, 40), book(320, 240, 150), book(17, 12, 10)];

/** What changes the pieces of an enclosure without changing its boards. */
const DRESSES: readonly Partial<SettledSettings>[] = [
  {},
  { coverStyle: "one piece", cushionBase: 3, closure: "band" },
  { covering: "none", closure: "clasp" },
  { lining: "none", cushionSides: 6, cushionTop: 2, closure: "tongue" },
  { covering: "none", lining: "none", coverStyle: "one piece", closure: "hook and loop" },
];

/** Every structure says how it is put together, with the cautions beside the steps that need them. */
export function saysTheOrder(structures: readonly Structure[]): void {
  test.each(titled(structures))("%s, %s", (_name, _text, { kind, settings }) => {
    // Each dress on an item, in turn.
    DRESSES.forEach((dress, index) => {
      const inForce = { ...settings, ...dress };
      const assembly = assemblyOf(kind, ITEMS[index % ITEMS.length]!, inForce);
      if (assembly === undefined) return;
      const steps = stepsOf(assembly, inForce);
      saysItWell(steps);
      everyPartHasAStep(steps, assembly, inForce);
      namesWhatIsThere(steps, kind, assembly, inForce);
    });
  });
}

function saysItWell(steps: readonly Step[]): void {
  expect(steps.length).toBeGreaterThanOrEqual(3);
  for (const { text } of steps) expect(text).toMatch(/^[A-Z][^\n]+[a-z.]\.$/);
  expect(new Set(steps.map(({ text }) => text)).size).toBe(steps.length);
  // Cut first, glue after.
  expect(steps[0]).toMatchObject({ text: expect.stringMatching(/^Cut /) as string, caution: "blade" });
  expect(steps.some(({ caution }) => caution === "adhesive")).toBe(true);
  for (const { caution } of steps) if (caution !== undefined) expect(Object.keys(CAUTIONS)).toContain(caution);
  // The first step with a knife, and the first with adhesive, carry the caution.
  expect(steps.find(({ text }) => /\b(?:cut|trim)\b/i.test(text))?.caution).toBe("blade");
  expect(steps.find(({ text }) => /\b(?:glue|paste)\b/i.test(text))?.caution).toMatch(/adhesive|blade/);
  // PVA is glue; paste is wheat-starch paste.
  for (const { text } of steps) if (/\bpaste\b/i.test(text)) expect(text).toContain("wheat-starch");
}

/** No part of the cut list lacks a step, and no step puts a part that is not cut. */
function everyPartHasAStep(steps: readonly Step[], assembly: Assembly, settings: SettledSettings): void {
  const put = steps.flatMap(({ parts }) => parts);
  expect([...new Set(put)].sort()).toEqual([...namesOf(assembly, settings)].sort());
}

/** A part that the words of a step name is cut, of that tray. */
function namesWhatIsThere(steps: readonly Step[], kind: Kind, assembly: Assembly, settings: SettledSettings): void {
  const names = namesOf(assembly, settings);
  const known = [...kind.parts, ...kind.coverings, ...CUSHION_PIECES, ...CLOSURE_PIECES].sort(
    (a, b) => b.length - a.length,
  );
  const spoken = new RegExp(`\\b(?:${known.join("|")})(?=s?\\b)`, "g");
  for (const { text } of steps) {
    const tray = assembly.trays.find(({ name }) => text.toLowerCase().startsWith(`${name}: `) && name !== "")?.name;
    for (const [name] of text.matchAll(spoken)) {
      const wanted = tray === undefined ? [...names].some((each) => each.endsWith(name)) : names.has(`${tray} ${name}`);
      if (!wanted) throw new Error(`"${text}" names a ${name}, which is not cut`);
    }
  }
}

function namesOf(assembly: Assembly, settings: SettledSettings): ReadonlySet<string> {
  return new Set(partList(assembly, settings).map(({ fullName }) => fullName));
}
