import { CAUTIONS } from "../enclosure/order";
import type { Mm } from "../measure/units";
import { bodyWidth, flow, gap, type Block, type Frame } from "./blocks";
import { codeModules } from "./codeModules";
import { rectangle, type Page, type Placed } from "./page";
import { runningFoot } from "./runningFoot";
import { heading, lineHeight, marked, paragraph, textLine, tickBox, TYPE, writeIn } from "./textBlocks";
import type { Ticket } from "./ticket";
import { ticketBlanks, ticketExploded } from "./ticketDrawings";
import { ticketFacts } from "./ticketFacts";
import { caliperLines, ticketParts } from "./ticketParts";
import type { Typesetter } from "./typesetter";

/** Said first, whatever the item. */
export const LOCAL_RULES =
  "Local rules and licensed practice come first: what stands here is advice for the bench, never a permission. " +
  "Hazardous objects are for those licensed to assess them.";

const CODE_SIDE: Mm = 22;
const CODE_GAP: Mm = 3;
const LABEL_WIDTH: Mm = 25;
const STEP_INDENT: Mm = 10;
const CAUTION_INDENT: Mm = 4.5;

/** Everything that the bench needs to make one enclosure; on a second page where it does not fit on one. */
export function benchTicket(ticket: Ticket, frame: Frame, type: Typesetter): readonly Page[] {
  const width = bodyWidth(frame);
  const foot = (page: number, of: number) =>
    runningFoot(
      `Bench ticket ${ticket.identifier}`,
      `sizes in ${ticket.sized.settings.unit}, page ${page} of ${of}`,
      frame,
      type,
    );
  const blocks = [
    ...headOf(ticket, width, type),
    ...cautions(ticket, width, type),
    gap(2),
    ticketExploded(ticket, width),
    ...caliperLines(ticket, width, type),
    ...signed(width, type),
    ...ticketParts(ticket, width, type),
    ...ticketBlanks(ticket, width, type),
    ...order(ticket, width, type),
  ];
  return flow(blocks, frame, foot, ticket.identifier);
}

/** Identifier, title and facts, with the code of the identifier at the right. */
function headOf(ticket: Ticket, width: Mm, type: Typesetter): readonly Block[] {
  const coded = codeModules(ticket.identifier) !== undefined;
  const room = coded ? width - CODE_SIDE - CODE_GAP : width;
  const code: Block = {
    height: 0,
    withNext: true,
    at: (x, y) => [
      {
        kind: "code",
        box: { x: x + width - CODE_SIDE, y, width: CODE_SIDE, height: CODE_SIDE },
        text: ticket.identifier,
      },
    ],
  };
  const facts = ticketFacts(ticket).flatMap(([label, text]) =>
    marked(
      (x, y) => [textLine(label, { x, y, width: LABEL_WIDTH }, { size: TYPE.body, bold: true })],
      LABEL_WIDTH,
      text,
      room,
      { size: TYPE.body },
      type,
    ),
  );
  return [
    ...(coded ? [code] : []),
    ...paragraph(ticket.identifier, room, { size: TYPE.title, bold: true, withNext: true }, type),
    ...paragraph(ticket.title, room, { size: TYPE.heading }, type),
    gap(1),
    ...facts,
  ];
}

/** Local rules first, then what this item asks for, then what its steps ask for. */
function cautions(ticket: Ticket, width: Mm, type: Typesetter): readonly Block[] {
  const steps = ticket.sized.kind.order(ticket.sized.settings);
  const ofSteps = Object.entries(CAUTIONS).filter(([name]) => steps.some(({ caution }) => caution === name));
  const style = { size: TYPE.small };
  const bar = (x: Mm, y: Mm): readonly Placed[] => [
    rectangle({ x, y: y + BAR_TOP, width: BAR, height: lineHeight(style.size) - 2 * BAR_TOP }, { weight: 0, shade: 1 }),
  ];
  const told = [LOCAL_RULES, ...ticket.cautions.map(capital), ...ofSteps.map(([, text]) => text)];
  return [
    gap(1.5),
    ...told.flatMap((text, index) =>
      marked(bar, CAUTION_INDENT, text, width, { ...style, bold: index <= ticket.cautions.length }, type),
    ),
  ];
}

const BAR: Mm = 1.6;
const BAR_TOP: Mm = 0.7;

/** The order of assembly, a box to tick at each step. */
function order({ sized }: Ticket, width: Mm, type: Typesetter): readonly Block[] {
  const size = TYPE.body;
  return [
    ...heading("Order of assembly", width, type),
    ...sized.kind
      .order(sized.settings)
      .flatMap(({ text }, index) =>
        marked(
          (x, y) => [
            tickBox(x, y, size),
            textLine(
              `${index + 1}.`,
              { x: x + NUMBER_FROM, y, width: STEP_INDENT - NUMBER_FROM },
              { size, bold: true },
            ),
          ],
          STEP_INDENT,
          text,
          width,
          { size },
          type,
        ),
      ),
  ];
}

const NUMBER_FROM: Mm = 4.8;

function signed(width: Mm, type: Typesetter): readonly Block[] {
  const half = width / 2;
  const height = lineHeight(TYPE.body) * 2;
  return [
    {
      height,
      withNext: false,
      at: (x, y) => {
        const foot = y + height - lineHeight(TYPE.body);
        return [
          ...writeIn("Made by", { x, y: foot, width: half - CODE_GAP }, TYPE.body, type),
          ...writeIn("Date", { x: x + half, y: foot, width: half }, TYPE.body, type),
        ];
      },
    },
  ];
}

function capital(text: string): string {
  return `${text.charAt(0).toUpperCase()}${text.slice(1)}${text.endsWith(".") ? "" : "."}`;
}
