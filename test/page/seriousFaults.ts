import axe from "axe-core";
import { page } from "./openPage";

/**
 * What axe finds serious or critical in a part of the page. It walks through all elements for each of its hundred rules,
 * those of hidden views too, in which it finds nothing: these are out of the way meanwhile, for a third of the work.
 */
export async function seriousFaults(part: string): Promise<readonly string[]> {
  if (!(await page.evaluate(() => "axe" in globalThis))) await page.evaluate(axe.source);
  const found = await page.evaluate(faults, part);
  return found.filter((line) => /, (serious|critical):/.test(line));
}

/** Runs in the page. */
async function faults(part: string): Promise<readonly string[]> {
  const { run } = (globalThis as unknown as { axe: typeof axe }).axe;
  const away = Array.from(document.querySelectorAll("#pane .view[hidden]"), (view) => {
    const place = document.createComment("");
    view.replaceWith(place);
    return () => place.replaceWith(view);
  });
  const { violations } = await run(part, { resultTypes: ["violations"] });
  for (const putBack of away) putBack();
  return violations.map(({ id, impact, nodes }) => `${id}, ${impact}: ${nodes[0]?.html.slice(0, 120)}`);
}
