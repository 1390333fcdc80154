import { setting } from "../definition";
import { mass } from "../massValues";
import { STARTER_HOURS } from "../starterHours";
import { hoursByKind, numberOrNone } from "../numberValues";
import { choice, text, yesNo } from "../wordValues";

/** Money, handling, and how dimension texts are read. */
export const WORKSHOP_SETTINGS = {
  adhesivePrice: setting({
    name: "adhesive price",
    takes: numberOrNone({ what: "a price to the kilogram" }),
    fallback: 0,
    meaning: "price of a kilogram of adhesive",
  }),
  labourHours: setting({
    name: "labour hours",
    takes: hoursByKind,
    fallback: STARTER_HOURS,
    meaning: "time to make one enclosure of each kind for an object of 300 x 210 x 40 mm; none: no labour in a budget",
    standing: "from memory",
  }),
  labourRate: setting({
    name: "labour rate",
    takes: numberOrNone({ what: "a price to the hour" }),
    fallback: 0,
    meaning: "what an hour costs in an estimate",
  }),
  aboveShoulder: setting({
    name: "above shoulder",
    takes: yesNo,
    fallback: false,
    meaning: "stored above the shoulder, where less may be lifted: lowers the weight that draws a caution",
  }),
  liftLimit: setting({
    name: "lift limit",
    takes: mass("23", "50 lb"),
    fallback: 23,
    meaning:
      "boxed weight that draws a caution, never a permission (NIOSH load constant); local manual-handling rules come first",
  }),
  estimateBy: setting({
    name: "estimate by",
    takes: text({ what: "a heading of the survey" }, "material", "kind"),
    fallback: "material",
    meaning: "what an estimate is grouped by",
  }),
  contingency: setting({
    name: "contingency",
    takes: numberOrNone({ what: "a percentage", aboveZero: true, examples: ["10"] }, { suffix: "%" }),
    fallback: 10,
    unit: "%",
    meaning: "added to an estimate for spoilt pieces and surprises",
  }),
  currency: setting({
    name: "currency",
    takes: text({ what: "a text" }),
    fallback: "",
    byDefault: "-",
    meaning: "the money that your prices are in, such as EUR; named with every cost",
  }),
  order: setting({
    name: "order",
    takes: text({
      what: "the letters H, W and D (or L) in the order of the text",
      examples: ["HWD", "LWD"],
      apart: true,
    }),
    fallback: "HWD",
    meaning: "order of the numbers in dimension texts",
  }),
  textUnit: setting({
    name: "text unit",
    takes: choice("mm", "cm", "m", "in", "ft"),
    byDefault: "the workbook's unit",
    meaning: "what numbers without a unit mean in dimension texts",
  }),
} as const;
