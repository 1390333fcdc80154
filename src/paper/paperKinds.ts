export const PAPER_KINDS = ["tickets", "plans", "templates", "estimate", "shelf", "labels", "box-labels"] as const;

/** What can be printed. */
export type PaperKind = (typeof PAPER_KINDS)[number];

/** Kinds that are printed on sheets of labels, not on paper. */
export const ON_LABEL_SHEETS: readonly PaperKind[] = ["labels", "box-labels"];

/** What a file of one kind alone is called. */
export const TITLES: Readonly<Record<PaperKind, string>> = {
  estimate: "Materials budget",
  tickets: "Bench tickets",
  plans: "Cutting plans",
  shelf: "Room in the store",
  templates: "True-size templates",
  labels: "Labels of pieces",
  "box-labels": "Labels of boxes",
};
