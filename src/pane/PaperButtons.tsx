import { useState } from "preact/hooks";
import type { Estimate } from "../estimate/estimate";
import type { Saving } from "../host/excelPlace";
import { Unavailable } from "../measure/errors";
import { plainError } from "../measure/fault";
import { fontFileName } from "../paper/fontFileName";
import type { FontLoader } from "../paper/fonts";
import { LABEL_SHEETS, labelSheetWords } from "../paper/labelGrid";
import type { PaperSource, PaperKind } from "../paper/paperFile";
import type { PaneModel } from "./paneState";

const PAPER: readonly (readonly [what: readonly PaperKind[], words: string, file: string])[] = [
  [["tickets"], "Bench tickets", "bench-tickets"],
  [["plans"], "Cutting plans", "cutting-plans"],
  [["labels"], "Labels of pieces", "labels"],
  [["box-labels"], "Labels of boxes", "box-labels"],
  [["templates"], "Templates in true size", "templates"],
  [["estimate"], "Budget", "budget"],
  [["shelf"], "Room in the store", "shelf"],
];

interface PaperProps {
  readonly model: PaneModel;
  readonly source: PaperSource;
  /** Name of the survey's sheet, for the foot of the pages. */
  readonly sheet: string;
  readonly fonts: string;
  readonly saving: Saving;
}

/** Pages to print, as PDF files. What makes them is loaded at the first press. */
export function PaperButtons({ model, source, sheet, fonts, saving }: PaperProps) {
  const [size, setSize] = useState<"A4" | "Letter">("A4");
  const [halves, setHalves] = useState(false);
  const [once, setOnce] = useState(false);
  const [labelSheet, setLabelSheet] = useState("");
  const [done, setDone] = useState<number>();
  const { estimate } = source;
  const sheets = Object.entries(LABEL_SHEETS).filter(([, { paper }]) => paper === size);
  const grid = sheets.find(([name]) => name === labelSheet)?.[1];
  const load: FontLoader = async (font) => {
    const answer = await fetch(fonts + fontFileName(font));
    if (!answer.ok)
      throw new Unavailable(`the font ${fontFileName(font)} cannot be loaded: check the connection, and press again`);
    return new Uint8Array(await answer.arrayBuffer());
  };
  const printed = (): string => `${sheet}, ${DAY.format(new Date())}`;
  const whileShown = async (work: () => Promise<void>): Promise<void> => {
    setDone(0);
    try {
      await work();
    } catch (error) {
      model.say([plainError(error).message], true);
    } finally {
      setDone(undefined);
    }
  };
  const make = (what: readonly PaperKind[], name: string): Promise<void> =>
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
        `${made.pages} pages. Print at 100 %, not “fit to page”.`,
        ...made.notes,
      ]);
    });
  const makePack = (estimate: Estimate): Promise<void> =>
    whileShown(async () => {
      const { applicationPack, PACK_ADVICE, zippedPack } = await import(
        /* webpackChunkName: "application" */ "../pack/applicationPack"
      );
      const { survey, cells } = source;
      const options = { paper: size, printed: printed(), date: new Date() };
      const pack = await applicationPack({ survey, cells, estimate, name: sheet }, options, load);
      download(zippedPack(pack), "application.zip", saving === "as plain bytes" ? PLAIN_BYTES : "application/zip");
      model.say([offered("application.zip", saving), `${pack.files.length} files. ${PACK_ADVICE}`]);
    });
  if (saving === "never")
    return (
      <>
        <h2>On paper</h2>
        <p>
          Excel for Mac saves no file from a pane. Save the workbook, then make the pages with the command line (
          <code>enclosure-columns paper</code>), or open the workbook in Excel on the web and print from there.
        </p>
      </>
    );
  return (
    <>
      <h2>On paper</h2>
      <div class="row">
        <label class="field">
          Paper
          <select value={size} onChange={(event) => setSize(event.currentTarget.value === "Letter" ? "Letter" : "A4")}>
            <option>A4</option>
            <option>Letter</option>
          </select>
        </label>
        <label>
          <input type="checkbox" checked={halves} onChange={(event) => setHalves(event.currentTarget.checked)} />{" "}
          Tickets on half pages
        </label>
        <label>
          <input type="checkbox" checked={once} onChange={(event) => setOnce(event.currentTarget.checked)} /> Shared
          orders of assembly once
        </label>
        <label class="field">
          Labels
          <select value={labelSheet} onChange={(event) => setLabelSheet(event.currentTarget.value)}>
            <option value="">24 a sheet, no margin</option>
            {sheets.map(([name, each]) => (
              <option key={name} value={name}>
                {labelSheetWords(each)}
              </option>
            ))}
          </select>
        </label>
        {PAPER.map(([what, words, file]) => (
          <button key={file} type="button" disabled={done !== undefined} onClick={() => void make(what, file)}>
            {words}
          </button>
        ))}
        {estimate !== undefined && (
          <button type="button" disabled={done !== undefined} onClick={() => void makePack(estimate)}>
            Application for funds
          </button>
        )}
      </div>
      {done !== undefined && <progress value={done} max={1} aria-label="Making the pages" />}
    </>
  );
}

const DAY = new Intl.DateTimeFormat("en-GB", { dateStyle: "long" });

const PDF = "application/pdf";
const PLAIN_BYTES = "application/octet-stream";

/** Excel for Windows reports neither success nor failure. */
function offered(name: string, saving: Saving): string {
  return saving === "download"
    ? `${name}:`
    : `${name} was handed to Excel: look in the folder Downloads. If it is not there, this Excel saves no files from a pane; use the command line, or Excel on the web.`;
}

function download(bytes: Uint8Array, name: string, type: string): void {
  const address = URL.createObjectURL(new Blob([bytes as Uint8Array<ArrayBuffer>], { type }));
  const link = document.createElement("a");
  link.href = address;
  link.download = name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(address), 60_000);
}
