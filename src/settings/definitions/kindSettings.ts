import { arrangement, STACKED } from "../arrangement";
import { setting } from "../definition";
import { choiceOrLength, lengthAbove, lengthOrNone } from "../lengthValues";
import { twoFractions } from "../numberValues";
import { CLOSURES } from "../stock";
import { choice, yesNo } from "../wordValues";

/** What one kind of enclosure, or a few, leave to the maker. */
export const KIND_SETTINGS = {
  lidDepth: setting({
    name: "lid depth",
    takes: choiceOrLength(["auto", "full"], { examples: ["30", "1 1/4 in"] }),
    fallback: "auto",
    byDefault: "auto: full for a box up to 120 mm high, else 75 mm",
    meaning: "how far the lid reaches down the box",
    standing: "from memory",
    option: true,
  }),
  lidReveal: setting({
    name: "lid reveal",
    takes: lengthOrNone,
    fallback: 3,
    meaning: "what shows of the box below a closed full-depth lid",
    option: true,
  }),
  lidClearance: setting({
    name: "lid clearance",
    takes: lengthOrNone,
    fallback: 1,
    meaning: "total play of a lid over its box, in each direction",
    option: true,
  }),
  well: setting({
    name: "well",
    takes: yesNo,
    fallback: false,
    meaning:
      "layers of cushion round the item with a recess of its own size; cushion base, sides and top are then 10 mm unless given",
    standing: "from memory",
    option: true,
  }),
  liftingRibbon: setting({
    name: "lifting ribbon",
    takes: yesNo,
    fallback: false,
    meaning: "a ribbon of covering cloth under the item, to lift it out by",
    option: true,
  }),
  chemise: setting({
    name: "chemise",
    takes: choice("no", "card", "board"),
    fallback: "no",
    meaning:
      "slipcase: a wrapper round the book that goes in with it, of one piece of wrapper card, or of two case boards and a spine",
    standing: "common practice",
    option: true,
  }),
  closure: setting({
    name: "closure",
    takes: choice("none", ...CLOSURES),
    byDefault: "by kind: ties for wrapper, portfolio and folded clamshell, else none",
    meaning: "what holds it shut: of the stock row of material closure whose name has the word, by length or by piece",
    standing: "from memory",
    option: true,
  }),
  arrangement: setting({
    name: "arrangement",
    takes: arrangement,
    fallback: STACKED,
    byDefault: "stacked",
    meaning:
      "how items that share a box lie in it: one on another, beside each other along the width, or in rows of so many; columns x rows, where one row of measures is of all items together",
    standing: "common practice",
    option: true,
  }),
  dividers: setting({
    name: "dividers",
    takes: yesNo,
    fallback: true,
    meaning: "covered boards between items that lie beside each other",
    option: true,
  }),
  dividerHeight: setting({
    name: "divider height",
    takes: choiceOrLength(["auto"], { examples: ["30", "1 1/4 in"] }),
    fallback: "auto",
    byDefault: "auto: to the covered rim",
    meaning: "how high dividers stand over the covered floor",
    option: true,
  }),
  neck: setting({
    name: "neck",
    takes: choiceOrLength(["auto"], { examples: ["10", "3/8 in"] }),
    fallback: "auto",
    byDefault: "auto: 10 mm, at most a third of the inner tray",
    meaning: "three-tray box: what stands of the inner tray above the bottom",
    option: true,
  }),
  clamshellSpine: setting({
    name: "clamshell spine",
    takes: choice("hinged", "creased"),
    fallback: "hinged",
    meaning:
      "folded clamshell: trays hinged with cloth to a spine piece, or all creased from one blank where a sheet holds it",
    option: true,
  }),
  nestClearance: setting({
    name: "nest clearance",
    takes: lengthOrNone,
    fallback: 1,
    meaning: "total play of nested trays, in each direction",
    option: true,
  }),
  square: setting({
    name: "square",
    takes: lengthOrNone,
    fallback: 3,
    meaning: "clamshell: what the case stands out beyond its trays",
    standing: "common practice",
    option: true,
  }),
  joint: setting({
    name: "joint",
    takes: choiceOrLength(["auto"], { examples: ["5", "3/16 in"] }),
    fallback: "auto",
    byDefault: "auto: 2 case boards + 2 coverings, or what a thicker flap board needs",
    meaning: "clamshell, portfolio: gap between case board and spine",
    standing: "common practice",
    option: true,
  }),
  hingeLap: setting({
    name: "hinge lap",
    takes: lengthAbove("25", "1 in"),
    fallback: 25,
    meaning: "clamshell, portfolio: what the lining of a joint laps on to each board",
    option: true,
  }),
  flaps: setting({
    name: "flaps",
    takes: twoFractions,
    byDefault: "by kind: wrapper 1 / 0.5, portfolio 0.5 / 1",
    meaning:
      "share of their panel. Wrapper: the two flaps of each piece; portfolio: head and tail flaps / fore-edge flap",
    standing: "common practice",
    option: true,
  }),
  flapRelief: setting({
    name: "flap relief",
    takes: lengthOrNone,
    fallback: 3,
    meaning:
      "wrapper, portfolio: what the panel is taken shorter that flaps are a share of, so that they do not bind; none also cuts a wrapper's inner piece as wide as its space",
    standing: "common practice",
    option: true,
  }),
} as const;
