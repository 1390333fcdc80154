/** The two colours that a picture is shown in; every tone between them is ink laid on thinly. */
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
