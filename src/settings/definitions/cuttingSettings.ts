import { setting } from "../definition";
import { lengthAbove, lengthOrNone } from "../lengthValues";
import { numberOrNone, wholeNumber, wholeOrNone } from "../numberValues";
import { choice, yesNo } from "../wordValues";

/** How sheets and rolls are cut. */
export const CUTTING_SETTINGS = {
  edgeTrim: setting({
    name: "edge trim",
    takes: lengthOrNone,
    fallback: 5,
    meaning: "what is trimmed off each edge of a sheet before cutting",
  }),
  pieceGap: setting({
    name: "piece gap",
    takes: lengthOrNone,
    fallback: 0,
    meaning: "what is lost between pieces at a cut",
  }),
  join: setting({
    name: "join",
    takes: yesNo,
    fallback: false,
    meaning:
      "yes: a board that no sheet holds is cut in pieces and joined, single boards butted, laminated ones with the joints of the plies apart",
  }),
  planStyle: setting({
    name: "plan style",
    takes: choice("bench", "least sheets"),
    fallback: "bench",
    meaning:
      "bench: a plan that is easy to cut, with few settings of the fence; least sheets: as few sheets as can be found",
  }),
  matchAllowance: setting({
    name: "match allowance",
    takes: lengthOrNone,
    fallback: 3,
    meaning:
      "bench style: what each wall of a strip, and each part made to a finished one, is cut larger by to be trimmed to fit; none cuts all to size",
    standing: "common practice",
  }),
  stages: setting({
    name: "stages",
    takes: wholeNumber(2, 6),
    fallback: 3,
    meaning: "bench style: changes of direction on a sheet, the first cut being 1; a trim may follow",
    standing: "common practice",
  }),
  leastWaste: setting({
    name: "least waste",
    takes: lengthOrNone,
    fallback: 5,
    meaning: "bench style: no strip of waste is narrower",
    standing: "common practice",
  }),
  cutLength: setting({
    name: "cut length",
    takes: lengthOrNone,
    fallback: 0,
    meaning: "bench style: the longest cut that the shop can make",
  }),
  loosePanels: setting({
    name: "loose panels",
    takes: wholeOrNone("a whole number", "12"),
    fallback: 12,
    meaning: "bench style: panels that wait to be cut at the same time, at most, where possible",
  }),
  spareSheets: setting({
    name: "spare sheets",
    takes: numberOrNone({ what: "a percentage", examples: ["4"] }, { suffix: "%" }),
    fallback: 4,
    unit: "%",
    meaning: "bench style: sheets more than the fewest found that may be taken to save settings of the fence",
  }),
  openItems: setting({
    name: "open items",
    takes: wholeOrNone("a whole number", "20"),
    fallback: 0,
    meaning: "bench style: items with some pieces cut and some not, at most, where possible",
  }),
  batchSize: setting({
    name: "batch size",
    takes: wholeOrNone("a whole number", "40"),
    fallback: 0,
    meaning:
      "bench style: so many items are cut before the next are begun, in the order of batch, priority and row; none cuts all together",
  }),
  keepOffCuts: setting({
    name: "keep off-cuts",
    takes: yesNo,
    fallback: true,
    meaning: "with a batch size: what a batch leaves, from 40 x 150 mm, is used in later batches",
    standing: "common practice",
  }),
  benchLength: setting({
    name: "bench length",
    takes: lengthAbove("1.5 m", "60 in"),
    fallback: 1500,
    meaning: "bench style: a roll is first cut into lengths of at most this",
  }),
} as const;
