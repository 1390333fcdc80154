import type { Part } from "../enclosure/part";
import { listed } from "../settings/names";
import type { Settings } from "../settings/schema";
import type { Material, StockRow } from "../settings/stock";
import { materialsIn } from "./itemMaterials";

/**
 * Whether what an enclosure is made of suits what its item is made of. Each caution names the stock and what to ask its
 * supplier; a material that names no word of the list draws none.
 *
 * @param parts the whole part list, covering and cushioning included
 */
export function materialCautions(parts: readonly Part[], settings: Settings): readonly string[] {
  const used = stocksOf(parts, settings);
  return [
    ...forPhotographs(used, parts, settings),
    ...besideBuffer(used, settings),
    ...bareAndNotPermanent(used, parts),
  ];
}

const BESIDE_A_PHOTOGRAPH: ReadonlySet<Material> = new Set(["board", "card", "lining", "cushion"]);

/** ISO 18902 asks for enclosures of photographs that pass ISO 18916. */
function forPhotographs(used: readonly StockRow[], parts: readonly Part[], settings: Settings): readonly string[] {
  const { materials } = materialsIn(settings.material);
  if (!materials.has("photograph") && !materials.has("film")) return [];
  const unknown = used.filter(({ material, passesPat }) => BESIDE_A_PHOTOGRAPH.has(material) && passesPat !== true);
  const names = [
    ...unknown.map(({ stock }) => stock),
    ...(settings.adhesive > 0 && parts.some(isGlued) ? ["the adhesive"] : []),
  ];
  if (names.length === 0) return [];
  return [
    `photograph beside ${listed(names, "and")}: not known to pass ISO 18916 (PAT); ask the supplier for the test report, or take a stock that passes`,
  ];
}

function isGlued({ material, placed, plies }: Part): boolean {
  return material === "covering" || material === "lining" || placed?.role === "wall" || plies > 1;
}

/** Protein and some photographs fade or weaken beside an alkaline reserve. Common practice, no source. */
function besideBuffer(used: readonly StockRow[], settings: Settings): readonly string[] {
  if (!materialsIn(settings.material).alkaliSensitive) return [];
  const buffered = used.filter((row) => row.buffered === true).map(({ stock }) => stock);
  if (buffered.length === 0) return [];
  return [
    `wool, silk, leather, cyanotype or dye transfer beside ${listed(buffered, "and")}, which is buffered: common practice: unbuffered; ask a conservator, and the supplier for the pH`,
  ];
}

function bareAndNotPermanent(used: readonly StockRow[], parts: readonly Part[]): readonly string[] {
  if (parts.some(({ material }) => material === "lining")) return [];
  const poor = used.filter(({ permanence }) => permanence === "none").map(({ stock }) => stock);
  if (poor.length === 0) return [];
  return [
    `the item lies beside ${listed(poor, "and")}, of permanence none, without a lining between: line it, or ask the supplier for board after ISO 16245`,
  ];
}

/** The stocks of an enclosure, each once; what the stock table does not list is not known. */
function stocksOf(parts: readonly Part[], { stock }: Settings): readonly StockRow[] {
  return [...new Set(parts.map((part) => part.stock))].flatMap((name) => {
    const row = stock.find((each) => each.stock === name);
    return row === undefined ? [] : [row];
  });
}
