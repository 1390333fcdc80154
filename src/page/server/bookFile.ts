import { existsSync } from "node:fs";
import { basename, extname, join } from "node:path";
import { InputError, shown } from "../../measure/errors";
import { editWorkbook } from "../../workbook/editWorkbook";
import type { EditResult, WorkbookEdits } from "../../workbook/edits";
import { csvToWorkbook } from "../../filling/fillCsv";
import { openWorkbook, type Workbook } from "../../workbook/openWorkbook";
import { readCsv } from "../../workbook/readCsv";
import { saveBeside } from "../../files/saveBeside";
import { verifyEdit } from "../../workbook/verifyEdit";
import { openedBook, type OpenedBook } from "../openedBook";

/** The parts that differ from the file as it was opened. */
type Parts = Pick<EditResult, "changed" | "added" | "removed">;

/** A file as it was opened, which is never written over, and the workbook as the page last sent it. */
export interface BookFile {
  /** Where it lies, or would lie if it were on the disk: an uploaded file is saved where the server was started. */
  readonly path: string;
  readonly bytes: Uint8Array;
  readonly original: Workbook;
  readonly working: Workbook;
  readonly parts: Parts;
}

export interface SavedBook {
  readonly path: string;
  /** Messages for the user. */
  readonly notes: readonly string[];
}

/**
 * Opens a survey, a text table as a workbook.
 *
 * @throws InputError when it is neither, or cannot be read
 */
export function openBookFile(path: string, bytes: Uint8Array): BookFile {
  const kind = extname(path).toLowerCase();
  if (!BOOKS.includes(kind) && !TEXTS.includes(kind))
    throw new InputError("survey", shown(basename(path)), "give an .xlsx, .xlsm or .csv file");
  const original = openWorkbook(BOOKS.includes(kind) ? bytes : csvToWorkbook(readCsv(bytes), {}));
  return { path, bytes, original, working: original, parts: { changed: [], added: [], removed: [] } };
}

/** The working copy as the page shows it. */
export function shownBook(file: BookFile): OpenedBook {
  return openedBook(file.working, basename(file.path));
}

/**
 * The file with more edits in its working copy; nothing goes to the disk.
 *
 * @throws InputError when the workbook cannot carry them
 */
export function editedFile(
  file: BookFile,
  edits: WorkbookEdits,
): { readonly file: BookFile; readonly edit: EditResult } {
  const edit = editWorkbook(file.working, edits);
  const working = openWorkbook(edit.bytes);
  return { file: { ...file, working, parts: togetherWith(file.original, working, file.parts, edit) }, edit };
}

/**
 * Saves the working copy in the folder of the file that was opened: under the given name, else under the next free one, or
 * again under the name of an earlier save, of which a backup is kept.
 *
 * @param earlier where the page saved before, and no other program since
 * @param name as the user typed it
 * @throws InputError when the changes cannot be carried into the file, the folder cannot be written, the name is none, or
 * another file has it
 */
export function saveBookFile(
  file: BookFile,
  edits: WorkbookEdits,
  earlier: string | undefined,
  name?: string,
): SavedBook {
  const { file: edited, edit } = editedFile(file, edits);
  const wanted = name === undefined ? earlier : join(file.path, "..", fileName(file.path, name));
  if (wanted !== undefined && wanted !== earlier && existsSync(wanted))
    throw new InputError(
      "name",
      shown(basename(wanted)),
      "a file of that name is there already, and stays as it is",
      "press Save as again and give another name",
    );
  const { output, backup } = saveBeside({
    input: file.path,
    inputBytes: file.bytes,
    output: wanted ?? freePath(file.path),
    bytes: edit.bytes,
    verify: (written) => verifyEdit(file.original, { ...edit, ...edited.parts }, written),
    replace: wanted !== undefined && wanted === earlier,
  });
  return {
    path: output,
    notes: [...edit.notes, ...(backup === undefined ? [] : [`the save before is kept as ${basename(backup)}`])],
  };
}

const BOOKS = [".xlsx", ".xlsm"];
const TEXTS = [".csv", ".tsv", ".txt"];

/** Two edits in a row as one, from the parts of the first workbook and the last. */
function togetherWith(original: Workbook, working: Workbook, before: Parts, edit: Parts): Parts {
  const touched = new Set([...before.changed, ...before.added, ...edit.changed, ...edit.added]);
  const gone = new Set([...before.removed, ...edit.removed]);
  return {
    changed: [...touched].filter((part) => original.zip.has(part) && working.zip.has(part)),
    added: [...touched].filter((part) => !original.zip.has(part) && working.zip.has(part)),
    removed: [...gone].filter((part) => original.zip.has(part) && !working.zip.has(part)),
  };
}

/** `survey.xlsx` -> `survey-edited.xlsx`, or with the next number that is free. */
function freePath(path: string): string {
  const extension = extname(path);
  const stem = basename(path, extension).replace(/-edited(-\d+)?$/, "");
  const kind = bookKind(path);
  for (let number = 1; ; number++) {
    const free = join(path, "..", `${stem}-edited${number === 1 ? "" : `-${number}`}${kind}`);
    if (!existsSync(free)) return free;
  }
}

/** The name of another file beside this one, which no file has: `survey.xlsx` -> `survey 2.xlsx`. */
export function newName(path: string): string {
  const stem = basename(path, extname(path))
    .slice(0, LONGEST_NAME / 2)
    // A year belongs to the name, a count of files does not.
    .replace(/ \d{1,2}$/, "");
  for (let number = 2; ; number++) {
    const name = `${stem} ${number}${bookKind(path)}`;
    if (!existsSync(join(path, "..", name))) return name;
  }
}

/** A text table is saved as a workbook. */
function bookKind(path: string): string {
  const extension = extname(path);
  return BOOKS.includes(extension.toLowerCase()) ? extension : ".xlsx";
}

/** A name that a user typed, with the ending of its kind. @throws InputError when no file can be called so */
function fileName(path: string, typed: string): string {
  const kind = bookKind(path);
  const name = typed.trim();
  const ending = extname(name).toLowerCase();
  const expected = `give a name for a new file in the same folder, such as ${basename(freePath(path))}`;
  if (name === "" || name.length > LONGEST_NAME || IN_NO_NAME.test(name))
    throw new InputError(
      "name",
      shown(typed),
      expected,
      'without / \\ : * ? " < > | and without a point at either end',
    );
  if (OTHER_TABLES.includes(ending) && ending !== kind.toLowerCase())
    throw new InputError("name", shown(typed), expected, `this workbook is saved as ${kind}`);
  return ending === kind.toLowerCase() ? name : `${name}${kind}`;
}

const LONGEST_NAME = 120;
/** What a file system or a spreadsheet does not take in a name. */
const IN_NO_NAME = /[/\\:*?"<>|\p{Cc}]|^\.|\.$/u;
const OTHER_TABLES = [...BOOKS, ...TEXTS, ".xls", ".xlsb", ".ods"];
