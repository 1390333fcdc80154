import { useState } from "preact/hooks";
import type { Estimate } from "../estimate/estimate";
import type { Saving } from "../host/excelPlace";
import { Unavailable } from "../measure/errors";
import { plainError } from "../measure/fault";
import { fontFileName } from "../paper/fontFileName";
import type { FontLoader } from "../paper/fonts";
import { LABEL_SHEETS } from "../paper/labelGrid";
import type { PaperSource } from "../paper/paperFile";
import type { PaperKind } from "../paper/paperKinds";
import { counted } from "./numbers";
import type { PaneModel } from "./paneState";

interface PaperProps {
  readonly model: PaneModel;
  /** Name of the survey's sheet, for the foot of the pages. */
  readonly sheet: string;
  readonly fonts: string;
  readonly saving: Saving;
}

/** How pages are printed, as the user chooses it. */
export interface PaperOptions {
  readonly size: "A4" | "Letter";
  readonly halves: boolean;
  readonly once: boolean;
  /** Empty for the usual one. */
  readonly labelSheet: string;
}

/** What makes pages and archives here, with the options that all buttons share. */
export interface Paper {
  readonly options: PaperOptions;
  readonly choose: (change: Partial<PaperOptions>) => void;
  /** Share of the pages that are made; undefined when none are being made. */
  readonly done: number | undefined;
  readonly saving: Saving;
  readonly make: (source: PaperSource, what: readonly PaperKind[], name: string) => Promise<void>;
  readonly makePack: (source: PaperSource, estimate: Estimate) => Promise<void>;
}

/** Pages to print, as PDF files. What makes them is loaded at the first press. */
export function usePaper({ model, sheet, fonts, saving }: PaperProps): Paper {
  const [options, setOptions] = useState<PaperOptions>({ size: "A4", halves: false, once: false, labelSheet: "" });
  const [done, setDone] = useState<number>();
  const { size, halves, once, labelSheet } = options;
  const grid = labelSheetsFor(size).find(([name]) => name === labelSheet)?.[1];
  const load: FontLoader = async (font) => {
    const answer = await fetch(fonts + fontFileName(font));
    if (!answer.ok)
      throw new Unavailable(`the font ${fontFileName(font)} cannot be loaded: check the connection, and press again`);
    return new Uint8Array(await answer.arrayBuffer());
  };
  const printed = (): string => `${sheet}, ${DAY.format(new Date())}`;
  const whileShown = async (work: () => Promise<void>): Promise<void> => {
    setDone(0);
    model.say([]);
    try {
      await work();
    } catch (error) {
      model.say([plainError(error).message], true);
    } finally {
      setDone(undefined);
    }
  };
  return {
    options,
    choose: (change) => setOptions({ ...options, ...change }),
    done,
    saving,
    make: (source, what, name) =>
      whileShown(async () => {
        const { paperFile, USUAL_PAPER } = await import(/* webpackChunkName: "paper" */ "../paper/paperFile");
        const onProgress = async (fraction: number): Promise<void> => {
          setDone(fraction);
          // The page shows how far it has come before it goes on.
          await new Promise((resolve) => setTimeout(resolve, 0));
        };
        const made = await paperFile(
          what,
          source,
          {
            ...USUAL_PAPER,
            paper: size,
            twoUp: halves,
            once,
            labels: { ...USUAL_PAPER.labels, ...grid },
            printed: printed(),
            date: new Date(),
            onProgress,
          },
          load,
        );
        download(made.bytes, `${name}.pdf`, saving === "as plain bytes" ? PLAIN_BYTES : PDF);
        model.say([
          offered(`${name}.pdf`, saving),
          `${counted(made.pages, "page")}. Print at 100 %, not “fit to page”.`,
          ...made.notes,
        ]);
      }),
    makePack: ({ survey, cells }, estimate) =>
      whileShown(async () => {
        const { applicationPack, PACK_ADVICE, zippedPack } = await import(
          /* webpackChunkName: "application" */ "../pack/applicationPack"
        );
        const pack = await applicationPack(
          { survey, cells, estimate, name: sheet },
          { paper: size, printed: printed(), date: new Date() },
          load,
        );
        download(zippedPack(pack), "application.zip", saving === "as plain bytes" ? PLAIN_BYTES : "application/zip");
        model.say([offered("application.zip", saving), `${counted(pack.files.length, "file")}. ${PACK_ADVICE}`]);
      }),
  };
}

/** Sheets of labels of one size of paper, by name. */
export function labelSheetsFor(size: PaperOptions["size"]) {
  return Object.entries(LABEL_SHEETS).filter(([, { paper }]) => paper === size);
}

const DAY = new Intl.DateTimeFormat("en-GB", { dateStyle: "long" });

const PDF = "application/pdf";
const PLAIN_BYTES = "application/octet-stream";

/** Excel for Windows reports neither success nor failure. */
function offered(name: string, saving: Saving): string {
  return saving === "download"
    ? `${name} is in your downloads.`
    : `${name} was handed to Excel: look in the folder Downloads. If it is not there, this Excel saves no files from a pane; use the command line, or Excel on the web.`;
}

function download(bytes: Uint8Array, name: string, type: string): void {
  const address = URL.createObjectURL(new Blob([bytes as Uint8Array<ArrayBuffer>], { type }));
  const link = document.createElement("a");
  link.href = address;
  link.download = name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(address), KEPT_FOR);
}

/** How long a file waits for the browser to take it, ms. */
const KEPT_FOR = 60_000;
