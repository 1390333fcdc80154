import type { Assembly } from "../enclosure/assembly";
import { wholeUp, type Part } from "../enclosure/part";
import type { Step } from "../enclosure/step";
import { X, Y, Z } from "../enclosure/space";
import { nearestMark } from "../measure/benchLength";
import type { Mm } from "../measure/units";
import { plainName } from "../settings/names";
import type { Settings } from "../settings/schema";
import type { Closure } from "../settings/stock";
import { blankPart } from "./cutBlanks";

/** A longer edge is held at two places. From memory. */
const ONE_PLACE_MM: Mm = 250;
/** At which shares of its length an edge is held shut. */
export function closureShares(edge: Mm): readonly number[] {
  return edge > ONE_PLACE_MM ? [1 / 4, 3 / 4] : [1 / 2];
}

/** A tie that is fixed at one end and tied in a bow; what a bow takes of one that goes round; what a strap laps. From memory. */
const TIE_MM: Mm = 250;
const BOW_MM: Mm = 400;
const STRAP_LAP_MM: Mm = 40;
/** An elastic band as a share of what it goes round. From memory. */
const BAND_SHARE = 0.9;
/** Of tape whose width the stock table does not give. From memory. */
const USUAL_WIDTH_MM: Mm = 15;

interface ClosurePiece {
  readonly piece: string;
  /** What its stock is called: a row of material closure with this word in its name. */
  readonly word: string;
  /** How it is fixed at an edge; and where it goes round the whole. */
  readonly fixed: string;
  readonly round?: string;
}

/** How far in from an edge a tie or a tongue goes through; in the texts below its place is marked. From memory. */
const FROM_EDGE_MM: Mm = 15;
const FROM_EDGE = "@";

const STRAP = "glue one end of each down on the back, under the covering or lining";

const OF: Readonly<Record<Closure, ClosurePiece>> = {
  ties: {
    piece: "tie",
    word: "tie",
    fixed: `Cut a slit for each tie, ${FROM_EDGE} from the edge, the ties in pairs that meet; draw each through and glue its end down flat inside, under any lining.`,
    round: `Cut two slits for each tie in the outermost base, ${FROM_EDGE} in from its edges at spine and fore-edge; draw it through so that it lies inside between them, its ends as long as each other.`,
  },
  "hook and loop": {
    piece: "hook and loop strap",
    word: "hook and loop",
    fixed: `Cut each hook and loop strap in its two halves; ${STRAP}, and its counterpart on the front, where the strap reaches when shut.`,
  },
  tongue: {
    piece: "tongue",
    word: "tongue",
    fixed: `Cut a slot for each tongue in the front, ${FROM_EDGE} from its edge; ${STRAP}, and try that it goes in without a push.`,
  },
  clasp: {
    piece: "clasp",
    word: "clasp",
    fixed: `Fix each clasp by its strap: cut a slit, ${STRAP}, and its catch on the front; press and leave until dry.`,
  },
  band: {
    piece: "band",
    word: "band",
    fixed:
      "Cut two slits for each band in the back, draw its ends through and glue them down flat inside, under any lining.",
    round: "Join the ends of each band; put it round the closed enclosure, so that it lies flat and does not pull.",
  },
};

export const CLOSURE_PIECES = Object.values(OF).map(({ piece }) => piece);

/** The pieces that hold an enclosure shut: tape by length, whole metres of it in an estimate, or pieces. */
export function closurePieces({ closure, kind, outside }: Assembly, settings: Settings): readonly Part[] {
  if (closure === "none") return [];
  const { edges } = kind.closes!;
  const around = 2 * (outside[X] + outside[Z]);
  const over = outside[Z] + 2 * STRAP_LAP_MM;
  const held = places(outside[Y]) + (closure === "band" || edges < 3 ? 0 : 2 * places(outside[X]));
  const paired = closure === "ties" && edges > 0;
  const lengths: Partial<Record<Closure, Mm>> = {
    ties: edges > 0 ? TIE_MM : around + BOW_MM,
    band: BAND_SHARE * around,
  };
  const { piece, word } = OF[closure];
  const row = settings.stock.find(({ material, stock }) => material === "closure" && plainName(stock).includes(word));
  const wide = row?.sheetLength === undefined ? (row?.sheetWidth ?? USUAL_WIDTH_MM) : USUAL_WIDTH_MM;
  const goesRound = closure === "band" || (closure === "ties" && edges === 0);
  const note = goesRound ? "round the whole" : edges === 0 ? "over the edge of lid or flap" : "at the edges that open";
  const spec = { name: piece, tray: "", material: "closure" } as const;
  return [blankPart(spec, wholeUp(lengths[closure] ?? over), wide, paired ? 2 * held : held, row, note)];
}

function places(edge: Mm): number {
  return closureShares(edge).length;
}

/** How it is fixed, and where. */
export function closureStep({ closure, kind, outside }: Assembly, { answerUnit: unit }: Settings): readonly Step[] {
  if (closure === "none") return [];
  const { piece, fixed, round } = OF[closure];
  const { edges } = kind.closes!;
  const how = (edges === 0 ? (round ?? fixed) : fixed).replace(FROM_EDGE, `${nearestMark(FROM_EDGE_MM, unit)} ${unit}`);
  const at = (edge: Mm) =>
    `${closureShares(edge)
      .map((share) => nearestMark(share * edge, unit))
      .join(" and ")} ${unit}`;
  const ends = closure === "band" || edges < 3 ? "" : `; at head and tail, ${at(outside[X])} from the spine`;
  const text = `${how} Places: ${at(outside[Y])} from the head${ends}.`;
  const caution = /\bcut\b/i.test(text) ? "blade" : undefined;
  return [{ text, parts: [piece], ...(caution === undefined ? {} : { caution }) }];
}
