import type { Tray } from "./assembly";
import type { Blank } from "./blank";
import type { TrayForm } from "./build/trayBoards";
import type { CAUTIONS, Step } from "./step";

export const CUT_BOARDS: Step = {
  text: "Cut the boards with the grain as listed; check bases by their diagonals; mark the second wall of a pair from the first.",
  parts: [],
  caution: "blade",
};

/** The step at which what holds it shut is fixed; at the end where a kind does not say. */
export const CLOSURE_HERE: Step = { text: "", parts: ["closure"] };

/** What a binder has ready, and does at every joint of boards. */
export const SET_UP: Step = {
  text: "Work on rigid plastic: a thin bead of glue on edges that meet, corners pushed true within a minute, held with tape, weights or magnets. Sand before covering.",
  parts: [],
  caution: "adhesive",
};

/**
 * The boards of one tray: which walls first, where the adhesive goes, when card is laminated and trimmed.
 *
 * Beside a base the walls that are as long as its edge go first, and the others cover their ends. On a base the walls that
 * run along its full edge go first, and the others fit between them. A flange card is under the base before any wall.
 */
export function trayOrder(name: string, form: TrayForm): readonly Step[] {
  const put = stepsFor(name);
  const [through, between] = form.through === "side" ? [sides(form), HEADS] : [HEADS, sides(form)];
  const inner = form.layers === 2;
  const flanged = form.construction === "flanged base";
  const onBase = inner || form.construction === "on base";
  const ring = inner ? "inner " : "";
  const base = flanged ? [] : ["base"];
  const steps: Step[] = [];
  if (flanged)
    steps.push(
      put(
        ["base", "flange card"],
        "Glue the base to the middle of the larger flange card, adhesive on the board, the grain of both the same way; weight it flat until dry.",
        "adhesive",
      ),
    );
  if (onBase)
    steps.push(
      put(
        [...base, `${ring}${through.part}`],
        `Glue the ${ring}${through.words} first, on the base along its full edge and flush with it, against a straight stop that can be wiped.`,
        "adhesive",
      ),
      put(
        [`${ring}${between.part}`],
        `Fit the ${ring}${between.words} between them: glue the lower edge and both ends.`,
      ),
    );
  else
    steps.push(
      put(
        [...base, between.part],
        `Glue the ${between.words} first, along the edge of the base and ${flanged ? "down on the card" : "level with its underside"}; hold each upright with a block.`,
        "adhesive",
      ),
      put(
        [through.part],
        `Glue the ${through.words} along the base${flanged ? ", down on the card" : ""} and over the ends of the ${between.words}.`,
      ),
    );
  if (inner) {
    const foot =
      form.construction === "on base" ? "on the base" : `beside the base${flanged ? " and down on the card" : ""}`;
    steps.push(
      put(
        [`outer ${between.part}`, `outer ${through.part}`],
        `Glue the outer ring round the inner one, ${foot}: now the outer ${between.words} run through, so that the corners stagger.`,
      ),
    );
  }
  if (flanged)
    steps.push(put([], "When all is dry, trim the flange card flush with the walls, with a thin knife.", "blade"));
  if (form.endCards)
    steps.push(
      put(
        ["end card"],
        "Only then glue the end cards over the faces that show the ends of the through walls; trim flush when dry.",
        "blade",
      ),
    );
  return steps;
}

/** The boards of a tray that is built like one before it. */
export function builtLike(name: string, model: string, steps: readonly Step[]): readonly Step[] {
  const { text } = stepsFor(name)([], `Put its boards together in the same order as those of the ${model} tray.`);
  return [{ text, parts: steps.flatMap(({ parts }) => parts), caution: "adhesive" }];
}

/** What of a tray is lined before its boards are put together; none where nothing is. */
export function liningFirst({ name }: Tray, blanks: readonly Blank[]): readonly Step[] {
  const first = blanks.filter((blank) => blank.tray === name && blank.lines?.first === true);
  if (first.length === 0) return [];
  return [
    stepsFor(name)(
      first.map((blank) => blank.name),
      "Line the inside faces first, adhesive dry, pressed at once (or both faces); margins that meet a board stay bare.",
      "adhesive",
    ),
  ];
}

/** Covering and lining of one tray, piece by piece as they are cut. */
export function trayCovering({ name, openSpine, outsideShown }: Tray, blanks: readonly Blank[]): readonly Step[] {
  const put = stepsFor(name);
  return blanks
    .filter((blank) => blank.tray === name && blank.lines?.first !== true)
    .map((blank): Step => {
      const text = COVERING_WORDS[blank.name]!;
      return put(
        [blank.name],
        typeof text === "string" ? text : text[openSpine ? "three" : outsideShown === undefined ? "four" : "neck"],
        CAREFUL[blank.name],
      );
    });
}

const COVERING_WORDS: Readonly<Record<string, string | Readonly<Record<"three" | "four" | "neck", string>>>> = {
  "wall strip": {
    three: "Glue the wall strip round the three walls, turn it in round their ends, under the base and over the rim.",
    four: "Glue the wall strip round the walls from the middle of one, lap it, turn it in under the base and over the rim; slit the inside corners.",
    neck: "Glue the wall strip round the rim from the middle of one wall, lap it and turn it in over the rim; slit the inside corners. The walls below stay bare: the bottom hides them.",
  },
  "one-piece blank":
    "Glue the base to the middle of the one-piece blank, cut the corners, draw the covering up, over the rim and down inside; tabs first.",
  "spine-edge strip": "Glue the spine-edge strip over the spine edge of the base, turned in above and below.",
  "base panel": "Glue the base panel under the base.",
  "side wall lining":
    "Glue the side wall linings over the turn-in and on to the floor, their ends round the corners; rub them down well.",
  "fore-edge wall lining":
    "Glue the fore-edge wall lining over the turn-in and on to the floor, its ends round both corners; rub it down well.",
  "head wall lining": "Glue the head wall linings between the corners, over the turn-in and on to the floor.",
  "floor lining": "Glue the floor lining in last.",
};

const CAREFUL: Readonly<Record<string, keyof typeof CAUTIONS>> = {
  "wall strip": "adhesive",
  "one-piece blank": "adhesive",
};

/** Steps of one tray: its name before the words, and before the names of the parts. */
function stepsFor(tray: string): (parts: readonly string[], text: string, caution?: keyof typeof CAUTIONS) => Step {
  const [before, title] = tray === "" ? ["", ""] : [`${tray} `, `${capital(tray)}: `];
  return (parts, text, caution) => {
    const step = { text: `${title}${text}`, parts: parts.map((part) => `${before}${part}`) };
    return caution === undefined ? step : { ...step, caution };
  };
}

interface Pair {
  readonly part: string;
  readonly words: string;
}

const HEADS: Pair = { part: "head wall", words: "head walls" };

function sides({ openSpine }: TrayForm): Pair {
  return openSpine ? { part: "fore-edge wall", words: "fore-edge wall" } : { part: "side wall", words: "side walls" };
}

function capital(word: string): string {
  return `${word.charAt(0).toUpperCase()}${word.slice(1)}`;
}
