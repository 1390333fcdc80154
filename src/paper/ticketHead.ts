import type { Mm } from "../measure/units";
import type { Block } from "./blocks";
import { gap } from "./blocks";
import { hasCode } from "./codeModules";
import { rectangle, type Placed } from "./page";
import { lineHeight, marked, paragraph, textLine, TYPE } from "./textBlocks";
import type { Ticket } from "./ticket";
import { ticketFacts } from "./ticketFacts";
import type { Typesetter } from "./typesetter";

const CODE_SIDE: Mm = 22;
const CODE_GAP: Mm = 3;
const LABEL_WIDTH: Mm = 24;
const CAUTION_INDENT: Mm = 4.5;
const BAR: Mm = 1.6;
const BAR_TOP: Mm = 0.9;

/** Identifier, title and facts, with the code of the identifier at the right; then what to beware of with this item. */
export function ticketHead(ticket: Ticket, width: Mm, type: Typesetter): readonly Block[] {
  const coded = hasCode(ticket.identifier);
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
    ...paragraph(ticket.identifier, room, { size: TYPE.large, bold: true, withNext: true }, type),
    ...paragraph(ticket.title, room, { size: TYPE.heading }, type),
    gap(1),
    ...facts,
    gap(1),
    ...cautionLines(ticket.cautions.map(capital), width, type),
  ];
}

/** Each with a black bar before it. */
export function cautionLines(cautions: readonly string[], width: Mm, type: Typesetter): readonly Block[] {
  const style = { size: TYPE.body, bold: true };
  const bar = (x: Mm, y: Mm): readonly Placed[] => [
    rectangle({ x, y: y + BAR_TOP, width: BAR, height: lineHeight(style.size) - 2 * BAR_TOP }, { weight: 0, shade: 1 }),
  ];
  return cautions.flatMap((text) => marked(bar, CAUTION_INDENT, text, width, style, type));
}

function capital(text: string): string {
  return `${text.charAt(0).toUpperCase()}${text.slice(1)}${text.endsWith(".") ? "" : "."}`;
}
