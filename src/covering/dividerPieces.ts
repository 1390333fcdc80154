import type { Assembly } from "../enclosure/assembly";
import type { Blank } from "../enclosure/blank";
import type { Step } from "../enclosure/step";
import { benchLength } from "../measure/benchLength";
import type { Settings } from "../settings/schema";

const COVERING = " covering";
export const DIVIDER_COVERINGS = ["divider covering", "cross divider covering"];

/** Covering of dividers: over the upper edge and down both faces to the floor. */
export function dividerBlanks({ parts }: Assembly): readonly Blank[] {
  return dividersOf(parts).map(({ name, tray, count, length, width, board }) => ({
    name: `${name}${COVERING}`,
    tray,
    material: "covering",
    count,
    along: length,
    across: 2 * width + board.caliper,
    within: true,
    note: "over the upper edge and both faces",
  }));
}

/** How dividers are made and put in. */
export function dividerSteps({ parts, holder }: Assembly, settings: Settings): readonly Step[] {
  const own = dividersOf(parts);
  if (own.length === 0) return [];
  const names = own.map((part) => `${holder.name} ${part.name}`.trim());
  const slot = benchLength(own[0]!.board.caliper + 2 * holder.covering, settings.answerUnit);
  const crossed = own.length === 2;
  return [
    ...(crossed
      ? [
          {
            text: `Cut slots ${slot} ${settings.answerUnit} wide, half way: from above into each divider, from below into each cross divider; mark them where items meet.`,
            parts: [],
            caution: "blade",
          } as const,
        ]
      : []),
    {
      text: `Glue covering over the upper edge and both faces of each divider${crossed ? ", slit it at the slots," : ""} and leave it to dry.`,
      parts: names.map((name) => `${name}${COVERING}`),
      caution: "adhesive",
    },
    {
      text: `Stand the dividers in their places${crossed ? ", pushed together at the slots" : ""}, loose, and try every item; then glue them down by their lower edges.`,
      parts: names,
      caution: "adhesive",
    },
  ];
}

function dividersOf(parts: Assembly["parts"]): Assembly["parts"] {
  return parts.filter(({ role }) => role === "divider");
}
