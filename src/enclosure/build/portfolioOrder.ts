import type { Settings } from "../../settings/schema";
import type { Assembly } from "../assembly";
import { CLOSURE_HERE } from "../order";
import type { Step } from "../step";

/** Flaps first, since the case covering lies over the laps of theirs; linings last. */
export function portfolioOrder(_assembly: Assembly, { covering }: Settings): readonly Step[] {
  return [
    {
      text: "Cut the boards, the spine, the risers and the flaps with the grain parallel to the spine; check each board square by its two diagonals.",
      parts: [],
      caution: "blade",
    },
    {
      text: "Lay all out flat, a joint apart, with strips of board as spacers; stand the risers up dry round the item and check that it lies in without a push.",
      parts: [],
    },
    ...(covering === "none" ? BARE : COVERED),
    CLOSURE_HERE,
    {
      text: "Line the boards and the flaps, over the turn-ins, with glue; press flat until dry, with the portfolio open.",
      parts: ["board lining", "head flap lining", "fore-edge flap lining"],
      caution: "adhesive",
    },
    { text: "Close the flaps at head and tail first, then the one at the fore-edge, then the front board.", parts: [] },
  ];
}

const BARE: readonly Step[] = [
  {
    text: "With hinges of your own, a joint apart, glue together the portfolio boards, the portfolio spine, each head riser and head flap, the fore-edge riser and the fore-edge flap.",
    parts: ["portfolio board", "portfolio spine", "head riser", "head flap", "fore-edge riser", "fore-edge flap"],
    caution: "adhesive",
  },
];

const COVERED: readonly Step[] = [
  {
    text: "Lay the back board down with its outside up and glue the laps of both flap coverings to it, at head and tail. Glue a head riser and a head flap to each, a joint apart; turn in the other edges.",
    parts: ["flap covering", "head riser", "head flap"],
    caution: "adhesive",
  },
  {
    text: "Glue front board, portfolio spine, back board, fore-edge riser and fore-edge flap to the case covering, a joint apart, over those laps. Turn in all round; along head and tail of the back board trim the covering flush.",
    parts: ["portfolio board", "portfolio spine", "fore-edge riser", "fore-edge flap", "case covering"],
    caution: "adhesive",
  },
  {
    text: "Line the joints: glue cloth over the spine and over each riser, down into each joint and up on to the boards; rub the joints well.",
    parts: ["spine lining", "head riser lining", "fore-edge riser lining"],
  },
];
