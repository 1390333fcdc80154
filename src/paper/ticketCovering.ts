import { stockFor } from "../settings/coverStock";
import { bareTemplate } from "../drawing/bareTemplate";
import { templateOfBlank } from "../drawing/templateOfBlank";
import { templateOfPart } from "../drawing/templateOfPart";
import { turnedTemplate, type Stretch, type Template } from "../drawing/template";
import { widenedTemplate } from "../drawing/widenedTemplate";
import { edgeCutWords } from "../drawing/edgeCutWords";
import { benchLength } from "../measure/benchLength";
import type { Mm, WorkbookUnit } from "../measure/units";
import { beside, gap, together, type Block } from "./blocks";
import { drawingBlock } from "./drawingBlock";
import { heading, paragraph, TYPE } from "./textBlocks";
import type { Ticket } from "./ticket";
import type { NumberedPart } from "./ticketBoards";
import { runRow, type RunCell } from "./ticketRuns";
import type { Typesetter } from "./typesetter";

/** A blank so much longer than wide is a strip: its lines are listed in rows, since a drawing would not help. */
const STRIP_RATIO = 3.5;
const COLUMN_GAP: Mm = 6;
/** A column narrower than this holds no blank that can be read. */
const LEAST_COLUMN: Mm = 80;
const DRAWN_WIDE: Mm = 80;
const UNITS_PER_MM = 3.4;
/** A strip that would be drawn lower than this share of its length is drawn wider: its lines would be one black bar. */
const LEAST_DRAWN_SHARE = 0.11;
/** Columns higher than this are printed card by card, so that they may go on on the next page. */
const HIGHEST: Mm = 170;

/** How lines are set in the room that a page leaves. */
export interface LinesRoom {
  readonly width: Mm;
  /** They may go on on the next page. */
  readonly parted: boolean;
  /** Blanks that their rows of stretches describe in full are not drawn. */
  readonly bare: boolean;
  /** Long pieces are drawn, too. */
  readonly strips?: boolean;
}

/** Where the lines of covering and lining run: strips as rows of stretches, other blanks drawn with theirs. */
export function coveringLines(
  { sized: { assembly, settings } }: Ticket,
  parts: readonly NumberedPart[],
  room: LinesRoom,
  type: Typesetter,
): readonly Block[] {
  const templates = assembly.kind
    .blanks(assembly, settings)
    .filter(({ along, across, material }) => along > 0 && across > 0 && stockFor(material, settings) !== "none")
    .map(templateOfBlank);
  return linesToMark(
    `Lines to mark on covering and lining, ${settings.answerUnit}`,
    templates,
    parts,
    settings.answerUnit,
    room,
    type,
  );
}

/** Folds and cuts of boards and cards that are folded up. */
export function foldLines(
  { sized: { settings } }: Ticket,
  parts: readonly NumberedPart[],
  { width, bare }: { readonly width: Mm; readonly bare: boolean },
  type: Typesetter,
): readonly Block[] {
  const templates = parts.filter(({ part }) => part.placed !== undefined).map(({ part }) => templateOfPart(part));
  return linesToMark(
    `Folds and cuts to mark, ${settings.answerUnit}`,
    templates,
    parts,
    settings.answerUnit,
    { width, parted: false, bare, strips: true },
    type,
  );
}

function linesToMark(
  title: string,
  templates: readonly Template[],
  parts: readonly NumberedPart[],
  unit: WorkbookUnit,
  { width, parted, bare, strips = false }: LinesRoom,
  type: Typesetter,
): readonly Block[] {
  const lined = templates.filter(
    ({ alongLength, alongWidth, corners }) => corners.length > 0 || isRun(alongLength) || isRun(alongWidth),
  );
  if (lined.length === 0) return [];
  const columns = width >= 2 * LEAST_COLUMN + COLUMN_GAP ? 2 : 1;
  const room = (width - (columns - 1) * COLUMN_GAP) / columns;
  const cards = lined.map((template) =>
    card(template, parts, unit, { width: room, bare: bare || columns === 1, strips }, type),
  );
  return [...heading(title, width, type), ...inColumns(cards, columns, room, parted)];
}

function isRun(run: readonly Stretch[]): boolean {
  return run.length > 1;
}

/** On half a page there is no room for drawings of blanks that the rows of stretches describe. */
function isDrawn(
  { length, width, alongLength, alongWidth, corners, lines }: Template,
  { bare, strips }: { readonly bare: boolean; readonly strips: boolean },
): boolean {
  if (corners.length > 0 || lines.some(({ kind }) => kind === "cut")) return true;
  if (bare) return false;
  if (strips) return true;
  return isRun(alongLength) && isRun(alongWidth) && Math.max(length, width) <= STRIP_RATIO * Math.min(length, width);
}

/** One piece: number and name, a drawing where it helps, and the stretches across and along its grain. */
function card(
  template: Template,
  parts: readonly NumberedPart[],
  unit: WorkbookUnit,
  { width, bare, strips }: { readonly width: Mm; readonly bare: boolean; readonly strips: boolean },
  type: Typesetter,
): Block {
  const number = parts.find(({ part }) => part.fullName === template.name)?.number;
  const isShown = isDrawn(template, { bare, strips });
  const widened = isShown && !bare && isTooLow(template) ? " (drawn wider than to scale)" : "";
  const title = `${number === undefined ? "" : `${number}  `}${template.name}${widened}`;
  const cells = (run: readonly Stretch[]) =>
    run.map((stretch): RunCell => ({ name: stretch.name, size: benchLength(stretch.length, unit) }));
  const runs = [template.alongWidth, template.alongLength].flatMap((run) =>
    isRun(run) ? [runRow(cells(run), width, type)] : [],
  );
  const [corner] = template.corners;
  const away =
    template.edges !== undefined
      ? [edgeCutWords(template.edges, unit)]
      : corner === undefined
        ? []
        : [`cut away ${benchLength(corner.length, unit)} along the length × ${benchLength(corner.width, unit)}`];
  const corners = away.flatMap((words) => paragraph(`hatched: ${words}`, width, { size: TYPE.body }, type));
  return together([
    ...paragraph(title, width, { size: TYPE.body, bold: true }, type),
    ...(isShown ? [drawn(template, width, bare), gap(1)] : []),
    ...runs,
    ...corners,
    gap(CARD_GAP),
  ]);
}

const CARD_GAP: Mm = 0.6;

function drawn(template: Template, width: Mm, bare: boolean): Block {
  const lying = template.length >= template.width ? template : turnedTemplate(template);
  const shown =
    !bare && isTooLow(lying) ? widenedTemplate(lying, (LEAST_DRAWN_SHARE * lying.length) / lying.width) : lying;
  const wide = Math.min(width, DRAWN_WIDE);
  return drawingBlock(bareTemplate(shown, Math.round(wide * UNITS_PER_MM)), wide, width);
}

function isTooLow({ length, width, edges }: Template): boolean {
  return edges === undefined && Math.min(length, width) < LEAST_DRAWN_SHARE * Math.max(length, width);
}

/** Cards one below the other, high ones first shared out over the columns, each column in the order given; or, parted, in rows. */
function inColumns(cards: readonly Block[], columns: number, room: Mm, parted: boolean): readonly Block[] {
  const stacks: Block[][] = Array.from({ length: columns }, () => []);
  const heightOf = (blocks: readonly Block[]) => blocks.reduce((sum, { height }) => sum + height, 0);
  for (const each of [...cards].sort((one, other) => other.height - one.height))
    stacks.reduce((least, stack) => (heightOf(stack) < heightOf(least) ? stack : least)).push(each);
  for (const stack of stacks) stack.sort((one, other) => cards.indexOf(one) - cards.indexOf(other));
  const first = (stack: readonly Block[]) => (stack.length === 0 ? Infinity : cards.indexOf(stack[0]!));
  stacks.sort((one, other) => first(one) - first(other));
  const at = (column: number) => column * (room + COLUMN_GAP);
  if (!parted && Math.max(...stacks.map(heightOf)) <= HIGHEST)
    return [beside(stacks.map((stack, column) => ({ block: together(stack), from: at(column) })))];
  return Array.from({ length: Math.ceil(cards.length / columns) }, (_, row) =>
    beside(cards.slice(row * columns, (row + 1) * columns).map((block, column) => ({ block, from: at(column) }))),
  );
}
