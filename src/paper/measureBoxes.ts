import { finished, type MeasureRule, type Round } from "../enclosure/rounds";
import { X, Y, Z } from "../enclosure/space";
import { benchLength, nearestMark } from "../measure/benchLength";
import type { Mm, WorkbookUnit } from "../measure/units";
import { beside, together, type Block } from "./blocks";
import { rectangle } from "./page";
import { heading, lineHeight, textLine, TYPE, writeIn } from "./textBlocks";
import type { Ticket } from "./ticket";
import { COLUMN_GAP, WIDE, WRITING_ROOM } from "./ticketBoards";
import { DIRECTION_WORDS } from "./ticketMatch";
import type { Typesetter } from "./typesetter";

/** A box for each measure of the finished tray, and below it what follows from the measure. */
export function measureBoxes(
  { madeTo, rules }: Round,
  ordinal: string,
  { sized }: Ticket,
  width: Mm,
  type: Typesetter,
): readonly Block[] {
  if (madeTo === undefined) return [];
  const { unit } = sized.settings;
  const size = TYPE.body;
  const across = width >= WIDE ? DIRECTIONS.length : 1;
  const room = width / across;
  const columns = DIRECTIONS.map((axis) => ({
    label: `${DIRECTION_WORDS[axis]}, planned ${benchLength(finished(madeTo, axis), unit)}:`,
    rules: rules.filter(({ direction }) => direction === axis).map((rule) => ruleText(rule, unit)),
  }));
  const step = lineHeight(size) * WRITING_ROOM;
  const column = ({ label, rules: sums }: (typeof columns)[number]): Block => ({
    height: BOX_HIGH + sums.length * step + BOX_GAP,
    withNext: true,
    at: (left, y) => {
      const taken = type.width(label, size) + BOX_GAP;
      return [
        textLine(label, { x: left, y: y + BOX_HIGH - lineHeight(size) - BOX_GAP, width: taken }, { size }),
        rectangle({
          x: left + taken,
          y,
          width: Math.min(BOX_WIDE, room - taken - COLUMN_GAP / 2),
          height: BOX_HIGH,
        }),
        ...sums.flatMap((text, row) => {
          const top = y + BOX_HIGH + (row + 1) * step - lineHeight(size);
          return writeIn(text, { x: left, y: top, width: Math.min(SUM_WIDE, room - COLUMN_GAP / 2) }, size, type);
        }),
      ];
    },
  });
  const boxes =
    across === 1
      ? together(columns.map(column))
      : beside(columns.map((each, index) => ({ block: column(each), from: index * room })));
  const title = `${ordinal} round: when the ${madeTo.name} tray is covered, measure its outside, ${unit}`;
  return [{ ...together([...heading(title, width, type), boxes]), withNext: true }];
}

const DIRECTIONS = [Y, X, Z] as const;
const BOX_HIGH: Mm = 6.5;
const BOX_GAP: Mm = 1;
const BOX_WIDE: Mm = 26;
const SUM_WIDE: Mm = 64;

/** `lid inside = height + 2:` */
function ruleText({ of, direction, more }: MeasureRule, unit: WorkbookUnit): string {
  const sum = Math.abs(more) < NOISE_MM ? "" : ` ${more > 0 ? "+" : "−"} ${nearestMark(Math.abs(more), unit)}`;
  return `${of} = ${DIRECTION_WORDS[direction]}${sum}:`;
}

const NOISE_MM: Mm = 1e-6;
