import type { Settings } from "../../settings/schema";
import type { Assembly } from "../assembly";
import { CUT_BOARDS, SET_UP } from "../order";
import type { Step } from "../step";
import { plainForm } from "../kinds/tray";
import { trayWork } from "./trayWork";

/** The fixed walls, their covering, the hinged front, and the lid made to the finished box. */
export function dropFrontOrder({ trays }: Assembly, flanged: boolean, settings: Settings): readonly Step[] {
  const lid = trays[1]!;
  return [
    CUT_BOARDS,
    SET_UP,
    {
      text: "Box: Line the inside faces of the side walls, the back wall and the base before the boards are put together, both faces of a thin board; margins that meet another board stay bare. Press flat until dry.",
      parts: ["box side wall lining", "box head wall lining", "box floor lining"],
      caution: "adhesive",
    },
    ...(flanged ? [CARD] : []),
    {
      text: `Box: Glue the back wall first, along the edge of the base at the back and ${flanged ? "down on the card" : "level with its underside"}; hold it upright with a square block until it grips.`,
      parts: ["box base", "box back wall"],
      caution: "adhesive",
    },
    {
      text: `Box: Glue the side walls along the base${flanged ? ", down on the card" : ""} and over the ends of the back wall; at the front they stand a board's thickness beyond the base.`,
      parts: ["box side wall"],
    },
    ...(flanged
      ? [
          {
            text: "Box: When all is dry, trim the flange card flush with walls and front edge, with a thin knife.",
            parts: [],
            caution: "blade",
          } as const,
        ]
      : []),
    { text: "Box: When dry, sand edges and joints smooth.", parts: [] },
    ...(settings.covering === "none" ? BARE : COVERED),
    {
      text: "Box: Glue the front lining in, flush with the foot of the front wall, over the turn-ins.",
      parts: ["box front lining"],
    },
    {
      text: "Box: Open and close the front wall: it must stand upright and lie flat without a push, and not touch the side walls.",
      parts: [],
    },
    {
      text: "Measure the finished box, its front wall closed, before the lid is cut: the lid is made to it and holds the front wall shut.",
      parts: [],
    },
    ...trayWork(lid, plainForm(settings.lidConstruction, settings), settings),
    {
      text: "Carry the filled box by its base, never by the lid or the front wall.",
      parts: [],
      caution: "weight",
    },
  ];
}

const CARD: Step = {
  text: "Box: Glue the base to the larger flange card, flush at the front edge, the grain of both the same way; weight it flat until dry.",
  parts: ["box base", "box flange card"],
  caution: "adhesive",
};

const BARE: readonly Step[] = [
  {
    text: "Box: Hang the front wall between the side walls on a hinge of your own, at its outer lower edge.",
    parts: ["box front wall"],
    caution: "adhesive",
  },
];

const COVERED: readonly Step[] = [
  {
    text: "Box: Glue the three-wall strip round the side walls and the back wall, turn it in at the front ends, under the base and over the rim.",
    parts: ["box three-wall strip"],
    caution: "adhesive",
  },
  {
    text: "Box: Glue the front-edge strip over the front edge of the base, turned in above and below.",
    parts: ["box front-edge strip"],
  },
  {
    text: "Box: Glue the front covering to the outer face of the front wall, over its upper edge and round both sides; the lap hangs free at the foot.",
    parts: ["box front wall", "box front covering"],
    caution: "adhesive",
  },
  {
    text: "Box: Lay the box on its back and stand the front wall in its place, two thicknesses of covering off the base. Glue the lap under the base alone: neither to the foot of the front wall nor to the edge of the card.",
    parts: [],
    caution: "adhesive",
  },
  { text: "Box: Glue the underside panel under the base, over the lap.", parts: ["box underside panel"] },
];
