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

/** The boards of one tray: which walls first, where the adhesive goes, when card is trimmed. */
export function trayOrder(name: string, form: TrayForm): readonly Step[] {
  const tray = name === "" ? "" : `${capital(name)}: `;
  const [through, between] = form.through === "side" ? [sides(form), "head walls"] : ["head walls", sides(form)];
  const steps: Step[] = [];
  const inner = form.layers === 2;
  const start = STANDS[inner ? "on base" : form.construction];
  steps.push(
    {
      text: `${tray}${start} Glue the ${inner ? "inner " : ""}${between} first, feet and ends; hold each upright with a square block until it grips.`,
      caution: "adhesive",
    },
    { text: `${tray}Glue the ${inner ? "inner " : ""}${through} to the base and over the ends of the ${between}.` },
  );
  if (inner) {
    const foot = form.construction === "on base" ? "on the base" : "down past the edge of the base";
    steps.push({
      text: `${tray}Glue the outer ring round the inner one, ${foot}: now the outer ${between} run through, so that the corners stagger.`,
    });
  }
  if (form.construction === "flanged base")
    steps.push({
      text: `${tray}Glue the flange card under base and walls, weight it flat until dry, then trim it flush with the walls.`,
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

const STANDS: Readonly<Record<TrayForm["construction"], string>> = {
  "on base": "The walls stand on the base, flush with its edges.",
  "around base": "The walls stand round the base, feet level with its underside.",
  "flanged base": "The walls stand round the base, feet level with its underside.",
};

function sides({ openSpine }: TrayForm): string {
  return openSpine ? "fore-edge wall" : "side walls";
}

function capital(word: string): string {
  return `${word.charAt(0).toUpperCase()}${word.slice(1)}`;
}
