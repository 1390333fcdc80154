import { setting } from "../definition";
import { lengthOrNone, lengthsOrNone } from "../lengthValues";
import { plainName } from "../names";
import { refuse, type ValueType } from "../valueType";
import { choice } from "../wordValues";

/** What a row says that goes into no standard size. */
export const MADE_TO_MEASURE = "made to measure";

/** A name, never a dimension text: many surveys head their measures with the same word. */
const sizeName: ValueType<string> = {
  choices: [{ is: "measure", what: "the name of a standard size", examples: ["A"] }],
  unit: "",
  read: (value) => {
    if (typeof value !== "string" || !/^\p{L}[\p{L} -]*\d*$/u.test(value.trim())) return refuse();
    return plainName(value) === plainName(MADE_TO_MEASURE) ? "" : value.trim();
  },
  written: (value) => value,
};

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
  size: setting({
    name: "size",
    otherNames: ["standard size"],
    takes: sizeName,
    fallback: "",
    byDefault: MADE_TO_MEASURE,
    meaning: "the standard size that the enclosure is made in, by its name in the table of sizes among the settings",
  }),
  slack: setting({
    name: "slack",
    takes: lengthOrNone,
    fallback: 0,
    meaning: "how much larger than an item needs a standard size may be, in each direction; none: as much as it takes",
  }),
} as const;
