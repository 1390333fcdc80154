import { CARE } from "../enclosure/step";
import { plyWords } from "../enclosure/benchInstruction";
import { roundsOf, type Round } from "../enclosure/rounds";
import type { Mm } from "../measure/units";
import type { Block } from "./blocks";
import { measureBoxes } from "./measureBoxes";
import { heading, paragraph, TYPE } from "./textBlocks";
import type { Ticket } from "./ticket";
import { caliperLines, mostlyOf, partTable, signed, type NumberedPart } from "./ticketBoards";
import type { Typesetter } from "./typesetter";

/** The front of a ticket: its boards, a table for each round, with boxes for what is measured between them. */
export function boardBlocks(
  ticket: Ticket,
  parts: readonly NumberedPart[],
  { width, tight }: { readonly width: Mm; readonly tight: boolean },
  type: Typesetter,
): readonly Block[] {
  const { assembly } = ticket.sized;
  const rounds = roundsOf(assembly);
  const boards = rounds.flatMap((round, index) => {
    const own = partsOf(round, parts);
    const stock = mostlyOf(own);
    const name = `${ORDINALS[index] ?? "Next"} round, ${stock}`;
    return [
      ...(index === 0
        ? heading(`${name}: cut these, ${ticket.sized.settings.answerUnit}. Care: ${CARE.blade}.`, width, type)
        : measureBoxes(round, name, ticket, width, type)),
      ...partTable(own, ticket, { how: index === 0 ? MATCH : undefined, stock, tight }, width, type),
    ];
  });
  return [
    signed(width, type),
    ...caliperLines(ticket, width, type),
    ...[...new Set(parts.flatMap(({ part }) => plyWords(part)))].flatMap((words) =>
      paragraph(`Laminated boards: ${words}.`, width, { size: TYPE.body }, type),
    ),
    ...boards,
  ];
}

const ORDINALS = ["First", "Second", "Third"];

const MATCH = "match; write down sums";

function partsOf({ parts: own }: Round, parts: readonly NumberedPart[]): readonly NumberedPart[] {
  return parts.filter(({ part: { placed } }) => placed !== undefined && own.includes(placed));
}
