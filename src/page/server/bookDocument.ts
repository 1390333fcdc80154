import { readFileSync, existsSync } from "node:fs";
import { basename, dirname } from "node:path";
import { InputError } from "../../measure/errors";
import { cellName } from "../../workbook/cellRef";
import { isFormula, type CellEdit, type PlacedColumn, type WorkbookEdits } from "../../workbook/edits";
import { readSheet } from "../../workbook/readSheet";
import { reverseOf, type Shift } from "../../workbook/shift/shift";
import { shiftedEdits } from "../../workbook/shift/shiftedEdits";
import type { WrittenBook } from "../openedBook";
import { editedFile, openBookFile, saveBookFile, shownBook, type BookFile, type SavedBook } from "./bookFile";
import { dropUnsaved, fingerprint, keepUnsaved, type Unsaved } from "./unsaved";

/** A workbook that is open in one tab of the browser. No other tab changes it. */
export interface BookDocument {
  readonly id: string;
  readonly file: BookFile;
  /** Everything that was changed since the file was opened, but for the cells that the page holds. */
  readonly steps: readonly WorkbookEdits[];
  /** What the page holds beside that, as it last told. */
  readonly cells: WorkbookEdits;
  readonly isUnsaved: boolean;
  /** Working copies before each write of the pane, so that the last can be taken back. */
  readonly before: readonly Written[];
  /** Where it was saved, and what was written there. */
  readonly saved?: { readonly path: string; readonly sha256: string };
}

/** A write of the pane: what was there before it, and the columns that it wrote. */
interface Written {
  readonly file: BookFile;
  readonly steps: readonly WorkbookEdits[];
  readonly sheet: string | undefined;
  readonly columns: readonly PlacedColumn[];
  /** Rows or columns that came or went, and the working copy right after. */
  readonly shifted?: { readonly shift: Shift; readonly after: BookFile };
  /** What was changed in the cells after it. */
  readonly since: readonly WorkbookEdits[];
}

export function newDocument(id: string, file: BookFile): BookDocument {
  return { id, file, steps: [], cells: {}, isUnsaved: false, before: [] };
}

/** The workbook as it was when its changes were last kept. @throws InputError when they do not belong to these bytes */
export function documentOf({ id, steps }: Unsaved, path: string, bytes: Uint8Array): BookDocument {
  const opened = newDocument(id, openBookFile(path, bytes));
  return { ...opened, steps, isUnsaved: true, file: withSteps(opened.file, steps) };
}

/** The same with what the page holds in its working copy, for a page that begins again. */
export function takenUp(document: BookDocument): BookDocument {
  const { cells, steps, file, before } = document;
  if (Object.keys(cells).length === 0) return document;
  return {
    ...document,
    cells: {},
    steps: [...steps, cells],
    file: editedFile(file, cells).file,
    before: withSince(before, [cells]),
  };
}

/** Keeps what is not saved beside the file; forgets it when there is nothing. @throws InputError when it cannot be written */
export function kept(document: BookDocument, cells: WorkbookEdits, isUnsaved: boolean, port: number): BookDocument {
  const { id, file, steps } = document;
  const name = basename(file.path);
  if (isUnsaved)
    keepUnsaved(file.path, file.bytes, {
      id,
      file: name,
      sha256: fingerprint(file.bytes),
      time: new Date().toISOString(),
      port,
      steps: [...steps, cells],
    });
  else dropUnsaved(dirname(file.path), { id, file: name });
  return { ...document, cells, isUnsaved };
}

/** Takes over what changed in the cells, then what the pane writes. */
export function written(
  document: BookDocument,
  cells: WorkbookEdits,
  write: WorkbookEdits,
): { readonly document: BookDocument; readonly answer: WrittenBook } {
  const flushed = takenUp({ ...document, cells });
  const { file, edit } = editedFile(flushed.file, write);
  const { steps } = flushed;
  const own: Written = {
    file: flushed.file,
    steps,
    sheet: write.columns?.sheet,
    columns: edit.columns,
    ...(write.shift === undefined ? {} : { shifted: { shift: write.shift, after: file } }),
    since: [],
  };
  return {
    document: { ...flushed, file, isUnsaved: true, steps: [...steps, write], before: [...flushed.before, own] },
    answer: { opened: shownBook(file), columns: edit.columns, notes: edit.notes },
  };
}

/** Takes back the last write of the pane, or rows and columns that came or went, and keeps what was changed in other cells since. */
export function takenBack(document: BookDocument, cells: WorkbookEdits): BookDocument {
  const last = document.before.at(-1);
  if (last === undefined) throw new InputError("undo", "nothing written", "takes back what the pane wrote");
  const since = [...last.since, cells].map((edits) => apartFrom(last, shiftedBack(last, edits)));
  return {
    ...document,
    cells: {},
    isUnsaved: true,
    steps: [...last.steps, ...since],
    file: withSteps(last.file, since),
    before: withSince(document.before.slice(0, -1), since),
  };
}

/**
 * Saves beside the file. An earlier save that another program has changed is left as it is, and a note says so.
 *
 * @param name of the new file, where the user gives one: the next save has it too
 * @throws InputError as `saveBookFile`
 */
export function saved(
  document: BookDocument,
  cells: WorkbookEdits,
  name?: string,
): { readonly document: BookDocument; readonly answer: SavedBook } {
  const { file, saved: earlier } = document;
  const isOurs = earlier !== undefined && sha256At(earlier.path) === earlier.sha256;
  const now = sha256At(file.path);
  const answer = saveBookFile(file, cells, isOurs ? earlier.path : undefined, name);
  dropUnsaved(dirname(file.path), { id: document.id, file: basename(file.path) });
  const notes = [
    ...answer.notes,
    ...(earlier === undefined || isOurs || name !== undefined || !existsSync(earlier.path)
      ? []
      : [`${basename(earlier.path)} was changed by another program, and stays as it is`]),
    ...(now === undefined || now === fingerprint(file.bytes)
      ? []
      : [
          `${basename(file.path)} was changed by another program after it was opened here: this save does not have that`,
        ]),
  ];
  return {
    document: {
      ...document,
      cells,
      isUnsaved: false,
      saved: { path: answer.path, sha256: sha256At(answer.path) ?? "" },
    },
    answer: { ...answer, notes },
  };
}

function sha256At(path: string): string | undefined {
  return existsSync(path) ? fingerprint(readFileSync(path)) : undefined;
}

function withSteps(file: BookFile, steps: readonly WorkbookEdits[]): BookFile {
  return steps.reduce((working, edits) => editedFile(working, edits).file, file);
}

/** Writes of the pane, with more changes after the last of them. */
function withSince(writes: readonly Written[], edits: readonly WorkbookEdits[]): readonly Written[] {
  const last = writes.at(-1);
  return last === undefined ? [] : [...writes.slice(0, -1), { ...last, since: [...last.since, ...edits] }];
}

/**
 * Changes made since rows or columns came or went, as they read without that. A formula that only has a fresh result is
 * left out: it may have lost a reference that comes back.
 */
function shiftedBack({ shifted }: Written, edits: WorkbookEdits): WorkbookEdits {
  if (shifted === undefined) return edits;
  const { shift, after } = shifted;
  const formulas = new Map<string, ReadonlyMap<string, string>>();
  const isFresh = ({ sheet, row, column, content }: CellEdit): boolean => {
    if (!isFormula(content) || !after.working.sheets.some(({ name }) => name === sheet)) return false;
    const known = formulas.get(sheet) ?? readSheet(after.working, sheet, { formulas: true }).formulas;
    formulas.set(sheet, known);
    return known.get(cellName(row, column)) === content.formula;
  };
  const { cells = [], ...rest } = edits;
  return {
    ...rest,
    ...shiftedEdits(
      {
        cells: cells.filter((cell) => !isFresh(cell)),
        widths: rest.widths ?? [],
        rows: rest.rows ?? [],
        frozen: rest.frozen ?? [],
        tables: rest.tables ?? [],
      },
      reverseOf(shift),
    ),
  };
}

/** Changes made since, except in the columns and sheets that are written. */
function apartFrom({ file, sheet, columns }: Written, edits: WorkbookEdits): WorkbookEdits {
  const sheets = new Set(file.working.sheets.map(({ name }) => name));
  const gone = new Set(columns.map(({ column }) => column));
  const isThere = ({ sheet }: { readonly sheet: string }): boolean => sheets.has(sheet);
  const stays = (each: { readonly sheet: string; readonly column: number }): boolean =>
    isThere(each) && !(each.sheet === sheet && gone.has(each.column));
  return {
    ...edits,
    ...(edits.cells ? { cells: edits.cells.filter(stays) } : {}),
    ...(edits.widths ? { widths: edits.widths.filter(stays) } : {}),
    ...(edits.rows ? { rows: edits.rows.filter(isThere) } : {}),
    ...(edits.frozen ? { frozen: edits.frozen.filter(isThere) } : {}),
  };
}
