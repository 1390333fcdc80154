import type { Estimate } from "../estimate/estimate";
import type { Cell } from "../item/answers";
import type { Settings } from "../settings/schema";

/** Each stock of a budget with what is known of how it keeps. */
export function materialsTable({ lines }: Estimate, { stock }: Settings): readonly (readonly Cell[])[] {
  const names = [...new Set(lines.map((line) => line.stock))];
  const rows = names.flatMap((name) => stock.find((row) => row.stock === name) ?? []);
  return [
    ["stock", "material", "permanence (ISO 16245)", "buffered", "passes PAT (ISO 18916)"],
    ...rows.map(({ stock: name, material, permanence, buffered, passesPat }) => [
      name,
      material,
      permanence === undefined
        ? NOT_KNOWN
        : permanence === "none"
          ? "not permanent"
          : `class ${permanence.toUpperCase()}`,
      yesOrNo(buffered),
      yesOrNo(passesPat),
    ]),
  ];
}

const NOT_KNOWN = "not known";

function yesOrNo(known: boolean | undefined): string {
  return known === undefined ? NOT_KNOWN : known ? "yes" : "no";
}
