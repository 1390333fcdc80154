import { day } from "../dayValue";
import { setting } from "../definition";
import { numberOrNone, percentage } from "../numberValues";
import { text, yesNo } from "../wordValues";

const PERCENT = [{ what: "a percentage", aboveZero: true, examples: ["10"] }, { suffix: "%" }] as const;

/** What a budget holds beside materials and contingency, and who pays for it. */
export const BUDGET_SETTINGS = {
  hoursBySize: setting({
    name: "hours by size",
    takes: yesNo,
    fallback: true,
    meaning:
      "labour hours are those of an object of 300 x 210 x 40 mm, and others take more or less by the area of their board; no: all sizes alike",
    standing: "from memory",
  }),
  setUpHours: setting({
    name: "set-up hours",
    takes: numberOrNone({ what: "hours", examples: ["0.5"] }),
    fallback: 0.5,
    unit: "hours",
    meaning: "time to set up the work on each kind of enclosure in each batch, however many there are",
    standing: "from memory",
  }),
  labourPaid: setting({
    name: "labour paid",
    takes: yesNo,
    fallback: true,
    meaning: "yes: hours are requested from the funder; no: they are given in kind by the applicant",
  }),
  spoilage: setting({
    name: "spoilage",
    takes: percentage,
    fallback: 0,
    unit: "%",
    meaning: "sheets or metres bought for spoilt pieces, in whole sheets; contingency is money beside it",
  }),
  shipping: setting({
    name: "shipping",
    takes: numberOrNone({ what: "a sum of money" }),
    fallback: 0,
    meaning: "what it costs to have the materials sent",
  }),
  tax: setting({
    name: "tax",
    takes: numberOrNone(...PERCENT),
    fallback: 0,
    unit: "%",
    meaning: "sales or value added tax on materials, contingency and shipping",
  }),
  indirect: setting({
    name: "indirect",
    takes: numberOrNone(...PERCENT),
    fallback: 0,
    unit: "%",
    meaning: "indirect cost, on all that is paid; whether it is allowed is the funder's rule",
  }),
  matchShare: setting({
    name: "match share",
    takes: percentage,
    fallback: 0,
    unit: "%",
    meaning: "share of what is paid that the applicant pays; the rest is requested",
  }),
  supplier: setting({
    name: "supplier",
    takes: text({ what: "a name" }),
    fallback: "",
    byDefault: "-",
    meaning: "supplier of the stocks for which the stock table names none",
  }),
  quoteDate: setting({
    name: "quote date",
    takes: day,
    fallback: "",
    byDefault: "-",
    meaning: "day of the prices for which the stock table names none",
  }),
} as const;
