import { plainRows } from "../item/answers";
import { formatLengthWithUnit } from "../measure/formatLength";
import { MADE_TO_MEASURE } from "../settings/definitions/shelfSettings";
import { problemRows } from "../survey/problemRows";
import { shelfRows, shelfSpace, tooTallRows } from "../survey/shelfSpace";
import type { SizedSurvey } from "../survey/sizeSurvey";
import { HEAVY_BOXES, OTHER_KINDS, otherKinds } from "../survey/otherKinds";
import { surveySizes } from "../survey/standardSizes/surveySizes";
import { readyMadeList, readyMadeSizes, type ReadyMadeSizes } from "../survey/standardSizes/readyMadeSizes";
import { readyMadeRows, sizesRows } from "../survey/standardSizes/sizesTable";
import type { Output } from "./output";
import type { ReadSurvey } from "./sheets";
import { textTable } from "../pack/textTable";

/** `shelf`: room in the store, now and when boxed; and what each kind would take if all were of it. */
export function shelfCommand({ sized, cells }: ReadSurvey): Output {
  const space = shelfSpace(sized, cells);
  const table = plainRows(shelfRows(space, sized.settings));
  const below = [tooTallRows(space, sized.settings), problemRows(sized)].map(plainRows);
  const kinds = otherKinds(sized);
  return {
    text: [
      textTable(table),
      ...below.flatMap((rows) => (rows.length === 0 ? [] : ["", textTable(rows)])),
      "",
      OTHER_KINDS,
      textTable(kinds),
      "",
      HEAVY_BOXES,
    ].join("\n"),
    json: { shelf: table, tooTallAndLeftOut: below.flat(), kinds: kinds.slice(1) },
  };
}

/** Looks of a search whose time nobody set: a few seconds, and the same answer on any machine. */
const USUAL_LOOKS = { looks: 50_000_000 } as const;

/** `sizes`: the standard inside sizes of a survey, and the size of each row. */
export function sizesCommand({ sized }: ReadSurvey, count: number, milliseconds: number | undefined): Output {
  const budget = milliseconds === undefined ? USUAL_LOOKS : { milliseconds };
  const list = readyMadeList(sized.settings.sizes);
  if (list.length > 0) return readyMadeOutput(sized, readyMadeSizes(sized, list, count, budget));
  const found = surveySizes(sized, count, budget);
  const table = plainRows(sizesRows(sized, found));
  const leftOut = plainRows(problemRows(sized));
  const { answerUnit: unit } = sized.settings;
  const items = itemSizes(sized, found.sizeOf);
  const { slack } = sized.settings;
  return {
    text: [
      textTable(table, AREA_DECIMALS),
      "",
      `Inside sizes in ${unit}, board in ${unit === "in" ? "ft2" : "m2"}. ${gapText(found)}`,
      slack === 0
        ? "A size may be larger than an item needs by any amount: --set slack=20 sets a limit."
        : `A size is at most ${formatLengthWithUnit(slack, unit)} larger than an item needs.`,
      "",
      textTable([["item", "size"], ...items]),
      ...(leftOut.length === 0 ? [] : ["", textTable(leftOut)]),
    ].join("\n"),
    json: { sizes: table, items, leftOut },
  };
}

/** The same of a list of boxes to buy. */
function readyMadeOutput(sized: SizedSurvey, found: ReadyMadeSizes): Output {
  const table = plainRows(readyMadeRows(sized, found));
  const leftOut = plainRows(problemRows(sized));
  const items = itemSizes(sized, found.sizeOf);
  const { answerUnit: unit, currency } = sized.settings;
  const { total, least, toMeasure } = found;
  const over = total === 0 ? 0 : (total / least - 1) * PERCENT;
  const proved =
    over < PROVED_PERCENT
      ? "No choice of so many boxes of the list costs less (proved)."
      : `At most ${over.toFixed(2)} % over the least possible price (proved).`;
  const none =
    toMeasure.enclosures === 0 ? "" : ` ${toMeasure.enclosures} go into none of them, and are in no total of money.`;
  return {
    text: [
      textTable(table),
      "",
      `Boxes of the list: clear inside in ${unit}, prices${currency === "" ? "" : ` in ${currency}`}. ${proved}${none}`,
      "",
      textTable([["item", "size"], ...items]),
      ...(leftOut.length === 0 ? [] : ["", textTable(leftOut)]),
    ].join("\n"),
    json: { sizes: table, items, leftOut },
  };
}

function itemSizes({ survey }: SizedSurvey, sizeOf: ReadonlyMap<number, string>): readonly (readonly string[])[] {
  return [...sizeOf].map(([place, name]) => [survey.items[place]!.identifier, name === "" ? MADE_TO_MEASURE : name]);
}

const AREA_DECIMALS = 3;
/** Less is noise of sums. */
const PROVED_PERCENT = 0.005;
const PERCENT = 100;

function gapText({ totalM2, leastM2, toMeasure, groups, sizes }: ReturnType<typeof surveySizes>): string {
  const over = totalM2 === 0 ? 0 : (totalM2 / leastM2 - 1) * PERCENT;
  const proved =
    over < PROVED_PERCENT
      ? "No choice of so many sizes takes less board (proved)."
      : `At most ${over.toFixed(2)} % over the least possible (proved).`;
  const must =
    toMeasure.enclosures > toMeasure.leastPossible
      ? ` At least ${toMeasure.leastPossible} must be made to measure.`
      : "";
  // A size serves one kind in one board.
  const more = groups > sizes.length ? ` There are ${groups} kinds and boards, and each needs a size of its own.` : "";
  return proved + must + more;
}
