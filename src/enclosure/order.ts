import type { Settings } from "../settings/schema";
import type { TrayForm } from "./build/trayBoards";

/** A step of putting an enclosure together. Common practice, no source. */
export interface Step {
  readonly text: string;
  /** What to beware of in this step. */
  readonly caution?: keyof typeof CAUTIONS;
}

/** Said once beside the steps that they belong to; local rules and the maker's own sheets come first. */
export const CAUTIONS = {
  blade: "Blade: cut along a heavy steel rule, fingers behind its edge, in several light passes; a dull blade slips.",
  adhesive: "Adhesive: keep to its maker's safety sheet, with fresh air, and keep the item away until all is dry.",
  weight: "Weight: lift large boards and filled boxes with another person; your local handling rules come first.",
} as const;

export const CUT_BOARDS: Step = {
  text: "Cut the boards with the grain as listed; check each base square by its two diagonals.",
  caution: "blade",
};

/**
 * The boards of one tray: which walls first, where the adhesive goes, when card is laminated and trimmed.
 *
 * Beside a base the walls that are as long as its edge go first, and the others cover their ends. On a base the walls that
 * run along its full edge go first, and the others fit between them. A flange card is under the base before any wall.
 */
export function trayOrder(name: string, form: TrayForm): readonly Step[] {
  const tray = name === "" ? "" : `${capital(name)}: `;
  const [through, between] = form.through === "side" ? [sides(form), "head walls"] : ["head walls", sides(form)];
  const inner = form.layers === 2;
  const flanged = form.construction === "flanged base";
  const onBase = inner || form.construction === "on base";
  const ring = inner ? "inner " : "";
  const steps: Step[] = [];
  if (flanged)
    steps.push({
      text: `${tray}Glue the base to the middle of the larger flange card, the grain of both the same way; weight it flat until dry.`,
      caution: "adhesive",
    });
  if (onBase)
    steps.push(
      {
        text: `${tray}Glue the ${ring}${through} first, on the base along its full edge and flush with it, against a straight stop.`,
        caution: "adhesive",
      },
      { text: `${tray}Fit the ${ring}${between} between them: glue the lower edge and both ends.` },
    );
  else
    steps.push(
      {
        text: `${tray}Glue the ${between} first, along the edge of the base and ${flanged ? "down on the card" : "level with its underside"}; hold each upright with a square block until it grips.`,
        caution: "adhesive",
      },
      {
        text: `${tray}Glue the ${through} along the base${flanged ? ", down on the card" : ""} and over the ends of the ${between}.`,
      },
    );
  if (inner) {
    const foot =
      form.construction === "on base" ? "on the base" : `beside the base${flanged ? " and down on the card" : ""}`;
    steps.push({
      text: `${tray}Glue the outer ring round the inner one, ${foot}: now the outer ${between} run through, so that the corners stagger.`,
    });
  }
  if (flanged)
    steps.push({
      text: `${tray}When all is dry, trim the flange card flush with the walls, with a thin knife.`,
      caution: "blade",
    });
  if (form.endCards)
    steps.push({
      text: `${tray}Only then glue the end cards over the faces that show the ends of the through walls; trim flush when dry.`,
      caution: "blade",
    });
  return steps;
}

/** Covering and lining of one tray; what the settings leave out is not spoken of. */
export function trayCovering(name: string, form: TrayForm, settings: Settings): readonly Step[] {
  const tray = name === "" ? "" : `${capital(name)}: `;
  const covered = settings.covering === "none" ? [] : coveringSteps(tray, form, settings);
  return settings.lining === "none" ? covered : [...covered, { text: `${tray}Paste the floor lining in last.` }];
}

function coveringSteps(tray: string, form: TrayForm, settings: Settings): readonly Step[] {
  if (settings.coverStyle === "one piece")
    return [
      {
        text: `${tray}Glue the base to the middle of the one-piece blank, cut the corners, draw the covering up, over the rim and down inside; tabs first.`,
        caution: "adhesive",
      },
    ];
  return [
    {
      text: form.openSpine
        ? `${tray}Glue the wall strip round the three walls, turn it in round their ends, under the base and over the rim; then the strip over the spine edge.`
        : `${tray}Glue the wall strip round the walls from the middle of one of them, lap it, turn it in under the base and over the rim; slit it at the inside corners.`,
      caution: "adhesive",
    },
    ...(form.openSpine ? [] : [{ text: `${tray}Paste the base panel under the base.` }]),
  ];
}

function sides({ openSpine }: TrayForm): string {
  return openSpine ? "fore-edge wall" : "side walls";
}

function capital(word: string): string {
  return `${word.charAt(0).toUpperCase()}${word.slice(1)}`;
}
