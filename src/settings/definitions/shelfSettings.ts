import { setting } from "../definition";
import { lengthOrNone, lengthsOrNone } from "../lengthValues";
import { choice } from "../wordValues";

/** How finished enclosures are kept in the store, and how much larger than their items they may be. */
export const SHELF_SETTINGS = {
  shelfHeight: setting({
    name: "shelf height",
    takes: lengthsOrNone,
    fallback: [],
    meaning:
      "clear heights of the shelves: a box stands on the lowest that takes it, and one too tall for all is named",
  }),
  orientation: setting({
    name: "orientation",
    takes: choice("upright", "flat"),
    byDefault: "by kind: flat for open trays and portfolios, else upright",
    meaning: "how the closed enclosure is kept: standing on its tail, or lying on its back",
    standing: "common practice",
  }),
  slack: setting({
    name: "slack",
    takes: lengthOrNone,
    fallback: 0,
    meaning: "how much larger than an item needs a standard size may be, in each direction; none: as much as it takes",
  }),
} as const;
