import { KINDS } from "../enclosure/registry";
import { settingsOf } from "../settings/settingsOf";
import { settingsTable } from "../settings/settingsTable";
import { tableRecords } from "./tableRecords";
import { textTable } from "../pack/textTable";
import type { Output } from "./output";

/** `kinds`: every kind of enclosure with its other names, trays, constructions and parts. */
export function kindsCommand(): Output {
  const json = KINDS.map(({ name, otherNames, trays, parts, constructions }) => ({
    enclosure: name,
    alsoAccepted: otherNames,
    trays,
    constructions,
    parts,
  }));
  const text = KINDS.map(({ name, otherNames, trays, parts, constructions }) =>
    [
      `${name}${otherNames.length === 0 ? "" : ` (also ${otherNames.join(", ")})`}`,
      ...(trays.length === 0 ? [] : [`  trays: ${trays.join(", ")}`]),
      ...(constructions.length === 0 ? [] : [`  constructions: ${constructions.join(", ")}`]),
      `  parts: ${parts.join(", ")}`,
    ].join("\n"),
  ).join("\n\n");
  return { text, json };
}

/** `settings`: every setting with the value in force, where it came from, its default, meaning and standing. */
export function settingsCommand(settings: readonly unknown[]): Output {
  const table = settingsTable(settingsOf(settings));
  const json = tableRecords(table);
  const shortened = table.map(([setting, value, from, , , meaning, standing]) => [
    setting ?? "",
    value ?? "",
    from ?? "",
    standing ?? "",
    meaning ?? "",
  ]);
  return { text: textTable(shortened), json };
}
