import { kindNamed } from "../enclosure/kindNamed";
import { KINDS } from "../enclosure/registry";
import { InputError, shown } from "../measure/errors";
import type { Mm } from "../measure/units";
import { BOARD_KINDS, CARD_KINDS, type BoardGuide, type GuideRow } from "../settings/boardGuide";
import { didYouMean, plainName } from "../settings/names";
import { STARTER_GUIDE } from "../settings/starterGuide";
import { ITEM_MATERIALS } from "./itemMaterials";

/** Which of the two general groups of rows an enclosure is looked up in. */
export type GuideGroup = typeof BOARD_KINDS | typeof CARD_KINDS;

/** A guide as one kind of enclosure reads it. */
export interface PreparedGuide {
  /** Rows of that kind first, then those of its group; the last has no limits. */
  readonly rows: readonly GuideRow[];
  /** What was added to it, in plain words; empty where it is as the shop wrote it. */
  readonly added: string;
}

/**
 * The rows of a guide for one kind of enclosure, in the order in which they are tried. What the guide lacks is added, so
 * that there always is an answer.
 *
 * @throws InputError when a row names an unknown kind or material, at once for the whole guide
 */
export function preparedGuide(guide: BoardGuide, kind: string, group: GuideGroup): PreparedGuide {
  const byGuide = remembered[group];
  let byKind = byGuide.get(guide);
  if (byKind === undefined) byGuide.set(guide, (byKind = new Map<string, PreparedGuide>()));
  let prepared = byKind.get(kind);
  if (prepared === undefined) {
    guide.forEach(refuseUnknown);
    prepared = prepare(guide, kind, group);
    byKind.set(kind, prepared);
  }
  return prepared;
}

/** What is added to a guide for either group, in plain words; none for one that has a last row without limits. */
export function addedToGuide(guide: BoardGuide): readonly string[] {
  return [BOARD_KINDS, CARD_KINDS].flatMap((group) => {
    const { added } = preparedGuide(guide, "", group as GuideGroup);
    return added === "" ? [] : [added];
  });
}

/** Whether a row covers everything of its kind. */
export function isWithoutLimits(row: GuideRow): boolean {
  const { material, shortSide, longSide, thickness, weightKg } = row;
  const anyMaterial = material === "" || CALIPER_MATERIALS.includes(material);
  return anyMaterial && [shortSide, longSide, thickness, weightKg].every((limit) => limit === undefined);
}

/** Words under `material` that say what a caliper is looked up among; others are the item's own material. */
export const CALIPER_MATERIALS: readonly string[] = ["board", "card"];

const remembered: Readonly<Record<GuideGroup, WeakMap<BoardGuide, Map<string, PreparedGuide>>>> = {
  [BOARD_KINDS]: new WeakMap(),
  [CARD_KINDS]: new WeakMap(),
};

function prepare(guide: BoardGuide, kind: string, group: GuideGroup): PreparedGuide {
  const own = guide.filter((row) => kind !== "" && !isGroup(row.kind) && kindNamed(row.kind).name === kind);
  const general = guide.filter((row) => row.kind === group);
  if (general.length === 0 && guide !== STARTER_GUIDE) {
    const rows = [...own, ...STARTER_GUIDE.filter((row) => row.kind === group)];
    return { rows, added: `board guide: no row for ${group}, so the rows of the starter guide are used for them` };
  }
  const rows = [...own, ...general];
  if (general.some(isWithoutLimits)) return { rows, added: "" };
  const thickest = general.reduce((most, row) => (caliperOf(row) > caliperOf(most) ? row : most));
  const limits = { material: "", shortSide: undefined, longSide: undefined, thickness: undefined, weightKg: undefined };
  return {
    rows: [...rows, { ...thickest, ...limits, at: "board guide, added row" }],
    added: `board guide: no last row without limits for ${group}, so one is added: ${thickest.askedText}`,
  };
}

function caliperOf({ asked }: GuideRow): Mm {
  return asked.plies * (asked.row?.caliper ?? asked.caliper!);
}

function isGroup(kind: string): boolean {
  return kind === BOARD_KINDS || kind === CARD_KINDS;
}

function refuseUnknown({ at, kind, material }: GuideRow): void {
  if (!isGroup(kind)) refuseUnknownKind(at, kind);
  if (material === "" || CALIPER_MATERIALS.includes(material)) return;
  if (ITEM_MATERIALS.some((each) => plainName(each) === material)) return;
  const words = [...ITEM_MATERIALS, ...CALIPER_MATERIALS];
  throw new InputError(
    `${at}, material`,
    shown(material),
    `give one of ${words.join(", ")}, or leave it blank`,
    didYouMean(material, words),
  );
}

function refuseUnknownKind(at: string, kind: string): void {
  try {
    kindNamed(kind);
  } catch (error) {
    if (!(error instanceof InputError)) throw error;
    const names = KINDS.flatMap(({ name, otherNames }) => [name, ...otherNames]);
    throw new InputError(
      `${at}, kind`,
      shown(kind),
      `give a kind of enclosure, ${BOARD_KINDS} or ${CARD_KINDS}`,
      didYouMean(kind, [...names, BOARD_KINDS, CARD_KINDS]),
    );
  }
}
