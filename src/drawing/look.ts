import { element } from "./svg";

/** The two colours that a drawing is made of; every tone between them is ink laid on thinly. */
export interface Look {
  readonly ink: string;
  readonly paper: string;
  /** Whether the paper is drawn, for a file of its own; in a page the page is the paper. */
  readonly ground: boolean;
}

/**
 * In a page: the ink is the text colour, so that light, dark and print follow the page. A page whose background is not
 * the system's own sets `--drawing-paper`.
 */
export const IN_PAGE: Look = { ink: "currentColor", paper: "var(--drawing-paper, Canvas)", ground: false };

/** In a file of its own, on white, whatever it is shown on. */
export const ON_WHITE: Look = { ink: "#222222", paper: "#ffffff", ground: true };

/** What every drawing accepts. */
export interface DrawingOptions {
  readonly look?: Look;
}

const FONT = "system-ui, 'Segoe UI', sans-serif";
const GROUND_CORNER = 6;

/** A whole drawing. The title is what a screen reader says. */
export function drawing(title: string, width: number, height: number, body: string, look: Look): string {
  const ground = look.ground
    ? element("rect", { width, height, rx: GROUND_CORNER, fill: look.paper, stroke: "none" })
    : "";
  return element(
    "svg",
    {
      xmlns: "http://www.w3.org/2000/svg",
      viewBox: `0 0 ${Math.ceil(width)} ${Math.ceil(height)}`,
      width: Math.ceil(width),
      height: Math.ceil(height),
      role: "img",
      "aria-label": title,
      "font-family": FONT,
      fill: "none",
      stroke: look.ink,
      "stroke-width": 1,
      "stroke-linejoin": "round",
      "stroke-linecap": "round",
    },
    ground,
    body,
  );
}
