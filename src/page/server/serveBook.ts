import { existsSync, readFileSync } from "node:fs";
import { createServer, type IncomingMessage, type Server, type ServerResponse } from "node:http";
import type { AddressInfo } from "node:net";
import { basename, extname, join } from "node:path";
import { InputError } from "../../measure/errors";
import { plainError } from "../../measure/fault";
import type { PlacedColumn, WorkbookEdits } from "../../workbook/edits";
import { editedFile, openBookFile, saveBookFile, shownBook, type BookFile } from "./bookFile";
import type { WrittenBook } from "../openedBook";
import { admission } from "./admission";
import { HEADERS } from "./headers";
import { pageFiles, TYPES } from "./pageFiles";
import { MalformedEdits, readEdits } from "./readEdits";

export interface ServeOptions {
  /** The file to begin with: where it lies, and its bytes. */
  readonly path: string;
  readonly bytes: Uint8Array;
  /** Where files chosen in the page are saved. */
  readonly folder: string;
  /** The folder of the build. */
  readonly dist: string;
  /** 0 for any free port. */
  readonly port: number;
  /** Called with an unexpected error, whose message the page shows. */
  readonly onFault: (error: Error) => void;
}

export interface Served {
  /** `http://127.0.0.1:PORT/enter/CODE`: lets one browser in, once. */
  readonly address: string;
  /** Such an address with a new code, for a browser that has forgotten its cookie. */
  readonly newAddress: () => string;
  readonly close: () => Promise<void>;
}

/**
 * Serves the workbook page to this machine alone. It answers the browser that came with its code only, at its own address only, and
 * sends nothing but the page's own files and the opened workbook.
 *
 * @throws InputError when the file cannot be opened, or the port is taken
 */
export async function serveBook({ path, bytes, folder, dist, port, onFault }: ServeOptions): Promise<Served> {
  if (!existsSync(join(dist, "page", "page.html")))
    throw new InputError("page", "a build without it", "needs the built page", "run npm run build first");
  const guard = admission();
  const files = pageFiles(dist);
  let file: BookFile = openBookFile(path, bytes);
  // Made before the page asks, which waits for it.
  let shown = JSON.stringify(shownBook(file));
  let saved: string | undefined;

  /** Working copies before each write of the pane, so that the last can be taken back. */
  let before: readonly Written[] = [];

  const routes: Readonly<Record<string, Route>> = {
    "GET book": () => Promise.resolve(shown),
    "POST open": async (request, query) => {
      const name = basename((query.get("name") ?? "").replaceAll("\\", "/"));
      file = openBookFile(join(folder, name), await bodyOf(request, LARGEST_FILE));
      saved = undefined;
      before = [];
      shown = JSON.stringify(shownBook(file));
      return shown;
    },
    "POST write": async (request): Promise<WrittenBook> => {
      const { cells, write } = readEdits((await bodyOf(request, LARGEST_EDIT)).toString("utf8"));
      const flushed = editedFile(file, cells).file;
      const { file: written, edit } = editedFile(flushed, write ?? {});
      const opened = shownBook(written);
      const own = { before: flushed, sheet: write?.columns?.sheet, columns: edit.columns, since: [] };
      before = [...withSince(before, [cells]), own];
      file = written;
      shown = JSON.stringify(opened);
      return { opened, columns: edit.columns, notes: edit.notes };
    },
    "POST take-back": async (request) => {
      const { cells } = readEdits((await bodyOf(request, LARGEST_EDIT)).toString("utf8"));
      const last = before.at(-1);
      if (last === undefined) throw new InputError("undo", "nothing written", "takes back what the pane wrote");
      const since = [...last.since, cells].map((edits) => apartFrom(last, edits));
      file = since.reduce((working, edits) => editedFile(working, edits).file, last.before);
      before = withSince(before.slice(0, -1), since);
      shown = JSON.stringify(shownBook(file));
      return shown;
    },
    "POST save": async (request) => {
      const { cells } = readEdits((await bodyOf(request, LARGEST_EDIT)).toString("utf8"));
      const { path: output, notes } = saveBookFile(file, cells, saved);
      saved = output;
      return { name: basename(output), notes };
    },
  };

  const answer = async (request: IncomingMessage, response: ServerResponse): Promise<void> => {
    const host = `127.0.0.1:${(server.address() as AddressInfo).port}`;
    const origin = request.headers.origin;
    if (request.headers.host !== host || (origin !== undefined && origin !== `http://${host}`))
      return send(response, FORBIDDEN, "text/plain", "This address answers only the page on this machine.");
    const url = URL.canParse(request.url ?? "", `http://${host}`) ? new URL(request.url!, `http://${host}`) : undefined;
    if (url === undefined) return send(response, MALFORMED, "text/plain", "This is no address of the page.");
    const cookie = request.method === "GET" ? guard.enter(url.pathname) : undefined;
    if (cookie !== undefined) {
      response.writeHead(SEE_OTHER, { ...HEADERS, "Set-Cookie": cookie, Location: "/" });
      return void response.end();
    }
    if (!guard.isIn(request))
      return send(response, FORBIDDEN, "text/plain", "Use the address that was printed; each works once.");
    const wanted = url.pathname.slice(1) || "page.html";
    const route = routes[`${request.method} ${wanted}`];
    if (route !== undefined) {
      const [status, body] = await outcome(() => route(request, url.searchParams));
      return send(response, status, "application/json", typeof body === "string" ? body : JSON.stringify(body));
    }
    const known = request.method === "GET" ? files.get(wanted) : undefined;
    if (known === undefined) return send(response, MISSING, "text/plain", "There is nothing here.");
    send(response, OK, TYPES[extname(known)] ?? "application/octet-stream", readFileSync(known));
  };
  const server = createServer((request, response) => {
    answer(request, response).catch((error: unknown) => {
      const cause = plainError(error);
      onFault(cause);
      send(response, FAILED, "text/plain", cause.message);
    });
  });
  await listening(server, port);
  const newAddress = () => `http://127.0.0.1:${(server.address() as AddressInfo).port}${guard.newPath()}`;
  return { address: newAddress(), newAddress, close: () => closed(server) };
}

type Route = (request: IncomingMessage, query: URLSearchParams) => Promise<unknown>;

/** A write of the pane: the working copy before it, and the columns that it wrote. */
interface Written {
  readonly before: BookFile;
  readonly sheet: string | undefined;
  readonly columns: readonly PlacedColumn[];
  /** What was changed in the cells after it. */
  readonly since: readonly WorkbookEdits[];
}

/** Writes of the pane, with more changes after the last of them. */
function withSince(writes: readonly Written[], edits: readonly WorkbookEdits[]): readonly Written[] {
  const last = writes.at(-1);
  return last === undefined ? [] : [...writes.slice(0, -1), { ...last, since: [...last.since, ...edits] }];
}

/** Changes made since, except in the columns and sheets that are written. */
function apartFrom({ before, sheet, columns }: Written, edits: WorkbookEdits): WorkbookEdits {
  const sheets = new Set(before.working.sheets.map(({ name }) => name));
  const gone = new Set(columns.map(({ column }) => column));
  const stays = (each: { readonly sheet: string; readonly column: number }): boolean =>
    sheets.has(each.sheet) && !(each.sheet === sheet && gone.has(each.column));
  return {
    ...edits,
    ...(edits.cells ? { cells: edits.cells.filter(stays) } : {}),
    ...(edits.widths ? { widths: edits.widths.filter(stays) } : {}),
  };
}

const LARGEST_FILE = 104_857_600;
/** A long survey whose every cell has changed. */
const LARGEST_EDIT = 268_435_456;

const OK = 200;
const SEE_OTHER = 303;
const MALFORMED = 400;
const REFUSED = 422;
const FORBIDDEN = 403;
const MISSING = 404;
const FAILED = 500;

async function outcome(work: () => Promise<unknown>): Promise<readonly [status: number, body: unknown]> {
  try {
    return [OK, await work()];
  } catch (error) {
    if (error instanceof InputError) {
      const { message, argument, got, expected, cure } = error;
      return [error instanceof MalformedEdits ? MALFORMED : REFUSED, { message, argument, got, expected, cure }];
    }
    throw error;
  }
}

function send(response: ServerResponse, status: number, type: string, body: string | Uint8Array): void {
  if (response.headersSent) return void response.end();
  response.writeHead(status, { ...HEADERS, "Content-Type": type });
  response.end(body);
}

async function bodyOf(request: IncomingMessage, largest: number): Promise<Buffer> {
  const chunks: Buffer[] = [];
  let size = 0;
  for await (const chunk of request as AsyncIterable<Buffer>) {
    size += chunk.length;
    if (size > largest)
      throw new InputError("file", `more than ${largest / 1_048_576} MB`, "takes smaller ones", "use the command line");
    chunks.push(chunk);
  }
  return Buffer.concat(chunks);
}

function listening(server: Server, port: number): Promise<void> {
  return new Promise((resolve, reject) => {
    server.once("error", (error: NodeJS.ErrnoException) => {
      const taken = error.code === "EADDRINUSE" || error.code === "EACCES";
      reject(taken ? new InputError("PORT", String(port), "needs a free port", "give another, or none") : error);
    });
    server.listen(port, "127.0.0.1", resolve);
  });
}

function closed(server: Server): Promise<void> {
  return new Promise((resolve) => {
    server.close(() => resolve());
    server.closeAllConnections();
  });
}
