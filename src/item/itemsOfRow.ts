import { isBlank } from "../measure/blank";
import { InputError } from "../measure/errors";
import { isSeveral, severalMeasures } from "../measure/severalMeasures";

/** The measures of a row as its cells hold them. */
export interface Measures {
  readonly height: unknown;
  readonly width: unknown;
  readonly depth: unknown;
  readonly weight?: unknown;
}

/** Measures of one item, and how many items have the same. */
export interface ItemMeasures extends Measures {
  readonly copies: number;
}

const SIZES = ["height", "width", "depth"] as const;

/**
 * The items of a row that share its enclosure: one, or as many as its height has measures, `300 | 310 * 2 | 290`.
 *
 * @throws InputError naming an argument with another number of measures
 */
export function itemsOfRow(row: Measures): readonly ItemMeasures[] {
  const { height, width, depth, weight } = row;
  if (!(isSeveral(height) || isSeveral(width) || isSeveral(depth) || isSeveral(weight)))
    return [{ height, width, depth, copies: 1 }];
  // A weight without a bar is that of all together.
  const names = severalMeasures(row.weight) === undefined ? SIZES : ([...SIZES, "weight"] as const);
  const lists = names.map((name) => [name, severalMeasures(row[name])] as const);
  const heights = lists[0]![1];
  for (const [name, list] of lists)
    if (list?.length !== heights?.length)
      throw new InputError(
        name,
        measures(list?.length),
        `the height has ${measures(heights?.length)}; give each as many`,
      );
  return heights!.map(({ copies }, index) => ({
    ...(Object.fromEntries(lists.map(([name, list]) => [name, list![index]!.text])) as unknown as Measures),
    copies,
  }));
}

function measures(count = 1): string {
  return count === 1 ? "1 measure" : `${count} measures`;
}

/** Nothing is measured: not of any of its items. A blank cell that is joined to others may be a 0. */
export function isBlankRow(row: Measures): boolean {
  return isUnmeasured(row.height) && isUnmeasured(row.width) && isUnmeasured(row.depth);
}

function isUnmeasured(cell: unknown): boolean {
  if (!isSeveral(cell)) return isBlank(cell);
  return cell.split("|").every((each) => ["", "0"].includes(each.replace(/\*.*/, "").trim()));
}
