import { CAUTIONS } from "../../src/enclosure/order";
import { titled, type Structure } from "../enclosure/everyEnclosure";

/** Every structure says how it is put together, with the cautions beside the steps that need them. */
export function saysTheOrder(structures: readonly Structure[]): void {
  test.each(titled(structures))("%s, %s", (_name, _text, { kind, settings }) => {
    const steps = kind.order(settings);
    expect(steps.length).toBeGreaterThanOrEqual(4);
    for (const { text } of steps) expect(text).toMatch(/^[A-Z][^\n]+[a-z.]\.$/);
    expect(new Set(steps.map(({ text }) => text)).size).toBe(steps.length);
    // Cut first, glue after.
    expect(steps[0]).toMatchObject({ text: expect.stringMatching(/^Cut /) as string, caution: "blade" });
    expect(steps.some(({ caution }) => caution === "adhesive")).toBe(true);
    for (const { text, caution } of steps) {
      if (caution !== undefined) expect(Object.keys(CAUTIONS)).toContain(caution);
      if (/\b(?:glue|paste)\b/i.test(text)) expect(steps.some((each) => each.caution === "adhesive")).toBe(true);
    }
    // The first step with a knife, and the first with adhesive, carry the caution.
    expect(steps.find(({ text }) => /\b(?:cut|trim)\b/i.test(text))?.caution).toBe("blade");
    expect(steps.find(({ text }) => /\b(?:glue|paste)\b/i.test(text))?.caution).toMatch(/adhesive|blade/);
  });
}
