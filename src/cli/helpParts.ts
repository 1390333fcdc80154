import { FIGURE_WORDS } from "../item/figureCatalogue";

/** Lines of help are at most this long. */
const LINE_LENGTH = 120;

const INDENT = " ".repeat(22);

/** What `--columns` takes, in lines that stand under each other. */
export const FIGURES_HELP = [...FIGURE_WORDS, "default"]
  .map((words, index, { length }) => `${index === 0 ? "(" : ""}${words}${index === length - 1 ? ")" : ";"}`)
  .reduce<readonly string[]>((lines, words) => {
    const line = lines.at(-1) === undefined ? INDENT + words : `${lines.at(-1)} ${words}`;
    return line.length <= LINE_LENGTH ? [...lines.slice(0, -1), line] : [...lines, INDENT + words];
  }, [])
  .join("\n");

/** What commands that plan sheets take. */
export const SEARCH_HELP = `  --seconds N         search this long for each stock (default: 10 s for all together); Ctrl-C keeps the best so far
  --steps N           search this many steps for each stock: the same plan on any machine`;

/** What commands that read a survey take, explained at `fill`. */
export const FINDING_HELP = `  --sheet, --heading-row, --height ... HEADING   as for fill`;

export const SETTINGS_HELP = `Settings (any command that sizes)
  --set TEXT          settings such as "fit=loose; wall board=3 mm"; as often as you like; the last one counts
  --settings FILE     a .csv with the headings setting and value
  --stock FILE        a .csv stock table (enclosure-columns settings --stock-table shows a starter)
  --guide FILE        a .csv board guide (enclosure-columns settings --board-guide shows a starter)
  --sizes FILE        a .csv table of standard sizes, for a survey with a column size
  --unit UNIT         mm, cm or in: what plain numbers mean and what answers are in`;

export const CAUTION = `Knives, heavy boxes, adhesives and hazardous objects can hurt. Sizes are advice for the bench: follow your local
rules, and leave hazardous objects to those licensed to assess them.`;
