import { finished, type MeasureRule, type Round } from "../enclosure/rounds";
import { X, Y, Z } from "../enclosure/space";
import { benchLength, nearestMark } from "../measure/benchLength";
import type { Mm, WorkbookUnit } from "../measure/units";
import type { Settings } from "../settings/schema";
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
  name: string,
  { sized }: Ticket,
  width: Mm,
  type: Typesetter,
): readonly Block[] {
  if (madeTo === undefined) return [];
  const { answerUnit: unit } = sized.settings;
  const size = TYPE.body;
  const wide = width >= WIDE;
  const room = wide ? width / DIRECTIONS.length : width;
  const columns = DIRECTIONS.map((axis) => ({
    label: `${DIRECTION_WORDS[axis]}, planned ${benchLength(finished(madeTo, axis), unit)}:`,
    rules: rules.filter(({ direction }) => direction === axis).map((rule) => ruleText(rule, unit)),
  }));
  const step = lineHeight(size) * WRITING_ROOM;
  const column = ({ label, rules: sums }: (typeof columns)[number]): Block => {
    const taken = type.width(label, size) + BOX_GAP;
    const box = Math.min(BOX_WIDE, room - taken - COLUMN_GAP / 2);
    // On half a page the sums stand beside the box.
    const [from, first] = wide ? [0, BOX_HIGH] : [taken + box + BOX_GAP, BOX_HIGH - step - BOX_GAP];
    return {
      height: Math.max(BOX_HIGH, first + sums.length * step) + BOX_GAP,
      withNext: true,
      at: (left, y) => [
        textLine(label, { x: left, y: y + BOX_HIGH - lineHeight(size) - BOX_GAP, width: taken }, { size }),
        rectangle({ x: left + taken, y, width: box, height: BOX_HIGH }),
        ...sums.flatMap((text, row) => {
          const top = y + first + (row + 1) * step - lineHeight(size);
          const sumRoom = Math.min(SUM_WIDE, room - from - COLUMN_GAP / 2);
          return writeIn(text, { x: left + from, y: top, width: sumRoom }, size, type);
        }),
      ],
    };
  };
  const boxes = wide
    ? beside(columns.map((each, index) => ({ block: column(each), from: index * room })))
    : together(columns.map(column));
  const title = `${name}: measure the ${sized.assembly.kind.folded ? "finished" : "covered"} ${madeTo.name} tray outside, ${unit}; ${fitWords(sized.settings)}`;
  return [{ ...together([...heading(title, width, type), boxes]), withNext: true }];
}

/** What is done with parts that are cut already: larger in the bench style, to size otherwise. */
function fitWords({ planStyle, matchAllowance }: Settings): string {
  return planStyle === "bench" && matchAllowance > 0 ? "trim to fit" : "check the fit";
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
