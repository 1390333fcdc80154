import type { Estimate } from "../estimate/estimate";
import { labelSheetWords } from "../paper/labelGrid";
import type { PaperSource } from "../paper/paperFile";
import type { PaperKind } from "../paper/paperKinds";
import { labelSheetsFor, type Paper } from "./usePaper";

const PAPER: readonly (readonly [what: readonly PaperKind[], words: string, file: string])[] = [
  [["tickets"], "Bench tickets", "bench-tickets"],
  [["plans"], "Cutting plans", "cutting-plans"],
  [["labels"], "Labels of pieces", "labels"],
  [["box-labels"], "Labels of boxes", "box-labels"],
  [["templates"], "Templates in true size", "templates"],
  [["shelf"], "Room in the store", "shelf"],
];

interface PaperProps {
  readonly paper: Paper;
  readonly source: PaperSource;
  readonly estimate: Estimate;
}

/** Pages to print. The budget has its own button beside the total. */
export function PaperButtons({ paper, source, estimate }: PaperProps) {
  const { options, choose, done, saving } = paper;
  const { size, halves, once, labelSheet } = options;
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
        {PAPER.map(([what, words, file]) => (
          <button
            key={file}
            type="button"
            disabled={done !== undefined}
            onClick={() => void paper.make(source, what, file)}
          >
            {words}
          </button>
        ))}
        <button type="button" disabled={done !== undefined} onClick={() => void paper.makePack(source, estimate)}>
          Application for funds
        </button>
      </div>
      <details>
        <summary>Paper, tickets and labels</summary>
        <div class="row">
          <label class="field">
            Paper
            <select
              value={size}
              onChange={(event) => choose({ size: event.currentTarget.value === "Letter" ? "Letter" : "A4" })}
            >
              <option>A4</option>
              <option>Letter</option>
            </select>
          </label>
          <label class="field">
            Labels
            <select value={labelSheet} onChange={(event) => choose({ labelSheet: event.currentTarget.value })}>
              <option value="">24 a sheet, no margin</option>
              {labelSheetsFor(size).map(([name, each]) => (
                <option key={name} value={name}>
                  {labelSheetWords(each)}
                </option>
              ))}
            </select>
          </label>
        </div>
        <label>
          <input
            type="checkbox"
            checked={halves}
            onChange={(event) => choose({ halves: event.currentTarget.checked })}
          />
          Tickets on half pages
        </label>
        <label>
          <input type="checkbox" checked={once} onChange={(event) => choose({ once: event.currentTarget.checked })} />
          Shared orders of assembly once
        </label>
      </details>
    </>
  );
}
