import { kindNamed } from "../enclosure/kindNamed";
import { isBlank } from "../measure/blank";
import { InputError, shown } from "../measure/errors";
import { plainName } from "../settings/names";
import { DEFINITIONS, type Settings } from "../settings/schema";
import { naming, type WeighedItem } from "../item/sizeItem";
import type { Survey, SurveyItem } from "./surveyItems";
import { copiesOf, readItem } from "./readItem";

/** The rows of each box that items share, in the order of the survey. */
export function groupBoxes(items: readonly SurveyItem[]): ReadonlyMap<string, readonly SurveyItem[]> {
  const boxes = new Map<string, SurveyItem[]>();
  for (const item of items) {
    if (item.box === "" || item.leftOut !== "") continue;
    const set = boxes.get(item.box);
    if (set === undefined) boxes.set(item.box, [item]);
    else set.push(item);
  }
  return boxes;
}

/** Those that share a box: each copy in the order of the survey. */
export function readBox(
  set: readonly [SurveyItem, ...SurveyItem[]],
  survey: Survey,
  settings: Settings,
): readonly WeighedItem[] {
  const [first] = set;
  // A set is not read without an enclosure to compare with; of one item, what is wrong is said in the order of the
  // cell functions.
  if (isBlank(first.cells.enclosure)) kindNamed(null);
  return set.flatMap((item) => {
    if (item !== first) refuseOtherEnclosure(item, first);
    return naming(item === first ? "" : `${item.identifier}, `, () => {
      const copies = copiesOf(item);
      const read = readItem(item, survey, settings);
      return Array.from({ length: copies }, () => read);
    });
  });
}

/**
 * What the rows of one box set: the first row's own values, and the board that any of them prefers.
 *
 * @throws InputError when two of them prefer different boards
 */
export function ownOfBox(set: readonly [SurveyItem, ...SurveyItem[]]): SurveyItem["own"] {
  const [first] = set;
  for (const key of OF_THE_BOX) refuseOther(set, key);
  const preferences = set.flatMap(({ own, identifier }) =>
    own.flatMap((each) => (each.key === "wallBoard" ? [{ each, identifier }] : [])),
  );
  const [preferred, ...others] = preferences;
  if (preferred === undefined) return first.own;
  const other = others.find(({ each }) => plainName(String(each.value)) !== plainName(String(preferred.each.value)));
  if (other !== undefined)
    throw new InputError(
      "preferred board",
      `${shown(other.each.value)} for ${other.identifier} in box ${first.box}, and ${shown(preferred.each.value)} for ${preferred.identifier}`,
      "one box is made of one board",
      "give both rows the same, or leave one blank",
    );
  return [...first.own.filter(({ key }) => key !== "wallBoard"), preferred.each];
}

/** A box is as hazardous as what lies in it. */
export function hazardsOf(set: readonly SurveyItem[]): string {
  return [...new Set(set.map(({ said }) => said.hazard).filter((hazard) => hazard !== ""))].join(", ");
}

const OF_THE_BOX = ["arrangement", "dividers", "dividerHeight"] as const;

/** A row that says nothing lies as the first does. */
function refuseOther(set: readonly [SurveyItem, ...SurveyItem[]], key: (typeof OF_THE_BOX)[number]): void {
  const saidBy = ({ own }: SurveyItem) => own.find((each) => each.key === key)?.value;
  const [first] = set;
  const wanted = saidBy(first);
  const other = set.find((item) => {
    const said = saidBy(item);
    return said !== undefined && plainName(shown(said)) !== plainName(shown(wanted));
  });
  if (other === undefined) return;
  const { name } = DEFINITIONS[key];
  throw new InputError(
    name,
    `${shown(saidBy(other))} for ${other.identifier} in box ${first.box}, whose first row says ${wanted === undefined ? "nothing" : shown(wanted)}`,
    "items of one box lie in one way",
    "give both rows the same, or another box",
  );
}

function refuseOtherEnclosure(item: SurveyItem, first: SurveyItem): void {
  const own = item.cells.enclosure;
  if (isBlank(own) || String(own).trim().toLowerCase() === String(first.cells.enclosure).trim().toLowerCase()) return;
  throw new InputError(
    "enclosure",
    `${shown(own)} for ${item.identifier} in box ${first.box}, whose first row says ${shown(first.cells.enclosure)}`,
    "one box is one enclosure",
    "give both rows the same, or another box",
  );
}
