import { stepsOf } from "../covering/stepsOf";
import { isOverLift } from "../board/cautions";
import { CAUTIONS } from "../enclosure/step";
import { InputError, NoAnswer } from "../measure/errors";
import { fromMm, tidy } from "../measure/units";
import { boardName } from "../settings/boards";
import { settingsOf } from "../settings/settingsOf";
import { DIRECTIONS, insideAnswer, outsideAnswer, type Answer, type Cell } from "../item/answers";
import { partsAnswer } from "../item/partsAnswer";
import { sizeRow } from "../item/sizeItem";
import type { Output } from "./output";
import { tableRecords } from "./tableRecords";
import { textTable } from "../pack/textTable";

export interface PartsOptions {
  readonly height: string | undefined;
  readonly width: string | undefined;
  readonly depth: string | undefined;
  readonly weight: string | undefined;
  readonly enclosure: string | undefined;
  readonly settings: readonly unknown[];
}

/** `parts`: every part to cut for one item. */
export function partsCommand(options: PartsOptions): Output {
  const settings = settingsOf(options.settings, { starterGuide: true });
  const sized = sizeRow({ ...options, weight: options.weight ?? null }, settings);
  if (sized === undefined)
    throw new InputError("height, width and depth", "nothing", "give all three", "see enclosure-columns parts --help");
  const table = rowsOf(partsAnswer(sized));
  const three = (answer: Answer) => rowsOf(answer)[0] ?? [];
  const { answerUnit: unit } = settings;
  const inside = three(insideAnswer(sized, "all"));
  const outside = three(outsideAnswer(sized, "all"));
  const steps = stepsOf(sized.assembly, sized.settings);
  const cautions = Object.entries(CAUTIONS)
    .filter(([name]) => steps.some(({ caution }) => caution === name) && (name !== "weight" || isOverLift(sized)))
    .map(([, text]) => text);
  const item = [sized.item.height, sized.item.width, sized.item.depth].map((size) => tidy(fromMm(size, unit)));
  const decimals = DECIMALS[unit];
  const size = (cells: readonly (number | string)[]) =>
    `${cells.map((cell) => shownSize(cell, decimals)).join(" x ")} ${unit}`;
  return {
    text: [
      `${sized.kind.name} for an item ${size(item)} (height x width x depth)`,
      `inside ${size(inside)}, outside ${size(outside)} closed and covered`,
      `board: ${boardName(sized.board)}${sized.weightKg === undefined ? " (no weight given: by size alone)" : ""}`,
      "",
      textTable(table, decimals),
      "",
      "Order of assembly",
      ...steps.map(({ text }, index) => `  ${index + 1}. ${text}`),
      "",
      ...cautions,
    ].join("\n"),
    json: {
      enclosure: sized.kind.name,
      unit,
      board: boardName(sized.board),
      inside: sides(inside),
      outside: sides(outside),
      order: steps,
      cautions,
      parts: tableRecords(table),
    },
  };
}

function sides(cells: readonly (number | string)[]) {
  return Object.fromEntries(DIRECTIONS.map((direction, index) => [direction, cells[index]]));
}

/** Fine enough for a fiftieth of a millimetre, and in inches for a thirty-second of one. */
const DECIMALS = { mm: 2, cm: 3, in: 5 } as const;

function shownSize(cell: number | string, decimals: number): string {
  return typeof cell === "number" ? String(Number(cell.toFixed(decimals))) : cell;
}

function rowsOf(answer: Answer): readonly (readonly (number | string)[])[] {
  const rows = Array.isArray(answer) ? (answer as readonly (readonly Cell[])[]) : [[answer as Cell]];
  return rows.map((row) =>
    row.map((cell) => {
      if (cell instanceof NoAnswer || cell instanceof InputError) throw cell;
      return cell;
    }),
  );
}
