import type { Frame } from "./blocks";
import { line, withTag, type Placed } from "./page";
import { lineHeight, textLine, TYPE } from "./textBlocks";
import type { Typesetter } from "./typesetter";
import { shortened } from "./wrapText";

const APART = 3;

/** At the foot of a page: what it belongs to, and at the right from what it is printed, when, and which page of how many. */
export function runningFoot(
  name: string,
  right: string,
  { width, height, margin, printed }: Frame,
  type: Typesetter,
): readonly Placed[] {
  const size = TYPE.small;
  const y = height - margin - lineHeight(size);
  const inner = width - 2 * margin;
  const said = shortened([printed, right].filter((text) => text !== "").join("; "), inner * MOST_SHARE, { size }, type);
  const taken = type.width(said, size) + APART;
  const room = inner - taken;
  return [
    line([margin, y], [width - margin, y]),
    ...withTag(
      [
        textLine(
          shortened(name, room, { size, bold: true }, type),
          { x: margin, y, width: room },
          { size, bold: true },
        ),
        textLine(said, { x: width - margin - taken, y, width: taken }, { size, align: "end" }),
      ],
      { role: "Artifact", of: {} },
    ),
  ];
}

const MOST_SHARE = 0.75;
