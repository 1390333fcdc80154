import axe from "axe-core";
import { page } from "./openPage";

/**
 * What axe finds serious or critical in a part of the page. It walks through all elements for each of its hundred rules,
 * so hidden views are out of the way meanwhile, for a third of the work: each of them is looked at while it shows.
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
  try {
    const { violations } = await run(part, { resultTypes: ["violations"] });
    return violations.map(({ id, impact, nodes }) => `${id}, ${impact}: ${nodes[0]?.html.slice(0, 120)}`);
  } finally {
    for (const putBack of away) putBack();
  }
}
