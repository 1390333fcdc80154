import { joinParts } from "../covering/joinParts";
import { joinWords, plyWords, workWords } from "../enclosure/benchInstruction";
import { matchesOf, type MatchedPart } from "../enclosure/matchesOf";
import type { Assembly } from "../enclosure/assembly";
import { X, Y, Z, type Axis } from "../enclosure/space";
import type { Part } from "../enclosure/part";
import type { PlacedPart } from "../enclosure/placedPart";
import type { Sized } from "../item/sizeItem";
import { benchLength, nearestMark } from "../measure/benchLength";
import type { Mm, WorkbookUnit } from "../measure/units";
import { line, type Placed } from "./page";
import type { DrawnCell } from "./table";
import { BASELINE_SHARE, lineHeight, textLine } from "./textBlocks";
import type { Typesetter } from "./typesetter";
import { NO_BREAK, wrapText } from "./wrapText";

/** What is read beside a part; `blank` where a sum is filled in. */
export interface MatchLine {
  readonly text: string;
  readonly blank: boolean;
}

export const DIRECTION_WORDS: Readonly<Record<Axis, string>> = { [X]: "width", [Y]: "height", [Z]: "depth" };

/**
 * How a part is matched, as sums for the caliper that was measured: `length: base + 2 × board: ____`.
 */
export function matchLines(part: Part, { assembly, settings }: Sized): readonly MatchLine[] {
  // How plies are laminated is said once, above the table.
  const said = plyWords(part);
  const work = [
    ...workWords(part, settings.answerUnit).filter((words) => !said.includes(words)),
    ...trimmedPlies(part, settings.answerUnit),
  ].map(plain);
  if (part.material === "cushion") work.unshift(plain(`${nearestMark(part.caliper, settings.answerUnit)} thick`));
  // What is cut over and trimmed flush is not matched.
  const pieces = joinParts([part], settings);
  if (pieces[0] !== part)
    return [
      plain(pieceWords(part, pieces, settings.answerUnit)),
      plain(joinWords(part, part, settings.answerUnit)),
      ...work,
    ];
  const matches = part.placed === undefined || part.placed.trim > 0 ? undefined : matchesOf(part.placed, assembly);
  if (matches === undefined) return work;
  const oneBoard = new Set(assembly.parts.map(({ board }) => board.stock)).size === 1;
  const [along, across] = matches.map((match) => sumOf(match, oneBoard, assembly.parts)) as [MatchLine, MatchLine];
  if (part.placed?.role === "divider") work.push(plain(dividerPlace(part.placed, assembly, settings.answerUnit)));
  if (matches.every(({ reference }) => reference === undefined))
    return part.plies > 1 ? work : [plain("cut to size"), ...work];
  if (matches.every(({ reference, terms }) => reference === "inside" && terms.length === 0))
    return [plain(`${along.text} × ${across.text}`), ...work];
  const wall = part.placed!.role === "wall";
  const same = along.text === across.text;
  const sums = same
    ? [{ ...along, text: `${along.text}${along.blank ? " each way" : ""}` }]
    : [
        { ...along, text: `length: ${along.text}` },
        { ...across, text: `${wall ? "height" : "width"}: ${across.text}` },
      ];
  return [...sums, ...work];
}

/** What a board that no sheet holds is cut in. */
function pieceWords({ count, plies }: Part, pieces: readonly Part[], unit: WorkbookUnit): string {
  const sizes = pieces.map(
    (piece) => `${piece.count / count} of ${benchLength(piece.length, unit)} × ${benchLength(piece.width, unit)}`,
  );
  return `larger than every sheet: cut ${sizes.join(" and ")}${plies === 1 ? "" : " for each ply"}`;
}

/** `stands 184 from the spine wall`: where each copy of a divider is, from wall to divider. */
function dividerPlace({ panels, lengthAxis, tray }: PlacedPart, { trays }: Assembly, unit: WorkbookUnit): string {
  const across = lengthAxis === Y ? X : Y;
  const from = trays.find(({ name }) => name === tray)!.inside.min[across];
  const places = panels.map(({ min }) => nearestMark(min[across] - from, unit));
  return `stands ${places.join(", ")} from the wall at the ${across === X ? "spine" : "head"}`;
}

/** Plies are cut larger: to what the laminated board is trimmed. */
function trimmedPlies({ plies, placed }: Part, unit: WorkbookUnit): readonly string[] {
  if (plies === 1 || placed === undefined) return [];
  return [`trim to ${benchLength(placed.length, unit)} x ${benchLength(placed.width, unit)}`];
}

function plain(text: string): MatchLine {
  const sized = text.replace(/ x (?=\d)/g, `${NO_BREAK}×${NO_BREAK}`);
  return { text: sized.replace(WITHIN_SIZE, NO_BREAK), blank: false };
}

/** Before a fraction, and before the sign after it: a size is never broken at the end of a line. */
const WITHIN_SIZE = /(?<=\d) (?=\d{1,2}\/|[+−](?:$|[\u00a0;]))/g;

/**
 * The direction of what it is matched to is said, but of a wall that is alike.
 *
 * @param oneBoard whether all is cut from one board, which needs no other name
 */
function sumOf({ reference, terms, axis }: MatchedPart, oneBoard: boolean, parts: Assembly["parts"]): MatchLine {
  if (reference === undefined) return plain("cut to size");
  const isWall = parts.some(({ name, role }) => name === reference && role === "wall");
  const direction = isWall ? (axis === Z ? "height" : "length") : DIRECTION_WORDS[axis];
  const start = `${reference} ${direction}`;
  const added = terms.map(({ count, thickness: { word } }) => {
    const times = Math.abs(count) === 1 ? "" : `${Math.abs(count)} × `;
    const name = oneBoard && word.endsWith("board") ? "board" : word;
    return ` ${count > 0 ? "+" : "−"} ${times}${name}`;
  });
  if (added.length > 0) return { text: `${start}${added.join("")}`, blank: true };
  return plain(isWall ? `as the ${reference}` : start);
}

/** Lines with room to write at their ends. */
export function matchCell(
  lines: readonly MatchLine[],
  width: Mm,
  { size, drop }: { readonly size: number; readonly drop: Mm },
  type: Typesetter,
): DrawnCell {
  const set: { readonly row: number; readonly from: Mm; readonly to: Mm; readonly words?: string }[] = [];
  let [row, taken]: [number, Mm] = [-1, width];
  for (const { text, blank } of lines) {
    const whole = type.width(text, size) + (blank ? GAP + MOST_BLANK : 0);
    // What has room beside the sum before stands on the same row.
    if (taken + APART + whole <= width) taken += APART;
    else [row, taken] = [row + 1, 0];
    wrapText(text, width - taken, { size }, type).forEach((words, index) => {
      if (index > 0) [row, taken] = [row + 1, 0];
      set.push({ row, from: taken, to: width, words });
      taken += type.width(words, size);
    });
    if (!blank) continue;
    if (taken + GAP + LEAST_BLANK > width) [row, taken] = [row + 1, width - LEAST_BLANK - GAP];
    const from = taken + GAP;
    taken = Math.min(width, from + MOST_BLANK);
    set.push({ row, from, to: taken });
  }
  const step = lineHeight(size) + WRITING;
  return {
    height: (row + 1) * step + drop,
    draw: (x, y) =>
      set.map(({ row: at, from, to, words }): Placed => {
        const top = y + drop + at * step;
        const base = top + lineHeight(size) * BASELINE_SHARE + DROP;
        return words === undefined
          ? line([x + from, base], [x + to, base])
          : textLine(words, { x: x + from, y: top, width: to - from }, { size });
      }),
  };
}

const GAP: Mm = 1.5;
const APART: Mm = 4;
const LEAST_BLANK: Mm = 13;
const MOST_BLANK: Mm = 18;
/** Handwriting needs more from line to line than type. */
const WRITING: Mm = 0.4;
const DROP: Mm = 0.5;
