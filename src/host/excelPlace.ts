/// <reference types="office-js" />

/** How this Excel lets a page save a file. */
export type Saving = "download" | "as plain bytes" | "never";

/** What the pane must know of the Excel that it is in. */
export interface ExcelPlace {
  readonly saving: Saving;
  /** Why the pane cannot work here, in a sentence; undefined where it can. */
  readonly lacking: string | undefined;
  /** Office's own theme, which may be another than the system's; undefined where Office does not say it. */
  readonly colours: "light" | "dark" | undefined;
}

/** The newest set of Excel's functions that the pane cannot do without: resizing a table. */
const NEEDED = "1.13";

export function excelPlace(): ExcelPlace {
  const { context } = Office;
  return {
    saving: SAVING[context.platform as unknown as string] ?? "download",
    lacking: context.requirements.isSetSupported("ExcelApi", NEEDED)
      ? undefined
      : `This Excel is too old for the pane: it needs ExcelApi ${NEEDED} (Microsoft 365, or Excel 2021). The ENC functions work without it.`,
    colours: coloursOf(context.officeTheme?.bodyBackgroundColor),
  };
}

/**
 * By Microsoft's documentation: Excel on the web downloads; the page in Excel for Windows refuses a PDF and takes plain
 * bytes; the one on a Mac does nothing, and says nothing.
 */
const SAVING: Readonly<Record<string, Saving>> = {
  OfficeOnline: "download",
  PC: "as plain bytes",
  Mac: "never",
  iOS: "never",
};

/** Below half of white the page is dark. */
const HALF = 128;

function coloursOf(background: string | undefined): ExcelPlace["colours"] {
  const parts = /^#?([0-9a-f]{2})([0-9a-f]{2})([0-9a-f]{2})$/i.exec(background ?? "");
  if (parts === null) return undefined;
  const [red, green, blue] = parts.slice(1).map((part) => Number.parseInt(part, 16)) as [number, number, number];
  // Rec. 601.
  return 0.299 * red + 0.587 * green + 0.114 * blue < HALF ? "dark" : "light";
}
