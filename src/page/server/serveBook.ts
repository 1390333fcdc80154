import { existsSync, readFileSync } from "node:fs";
import { createServer, type IncomingMessage, type ServerResponse } from "node:http";
import type { AddressInfo } from "node:net";
import { randomBytes } from "node:crypto";
import { basename, dirname, extname, join } from "node:path";
import { InputError } from "../../measure/errors";
import { plainError } from "../../measure/fault";
import type { StartedBook, WrittenBook } from "../openedBook";
import { newName, openBookFile, shownBook } from "./bookFile";
import { documentOf, kept, newDocument, saved, takenBack, takenUp, written, type BookDocument } from "./bookDocument";
import { bytesOfUnsaved, dropUnsaved, fingerprint, toldOf, unsavedIn } from "./unsaved";
import { admission } from "./admission";
import { HEADERS } from "./headers";
import { closed, listeningAgain } from "./listening";
import { pageFiles, TYPES } from "./pageFiles";
import { readEdits } from "./readEdits";
import { OK, SEE_OTHER, MALFORMED, FORBIDDEN, MISSING, FAILED, outcome, send, bodyOf } from "./exchange";

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
  const first = openBookFile(path, bytes);
  // Made before the page asks, which waits for it.
  const shownFirst = JSON.stringify(shownBook(first));
  // A page of another folder's file is not taken for one of this file, though their bytes are the same.
  const firstBase = fingerprint(Buffer.concat([Buffer.from(`${path}\n`), first.bytes]));
  const documents = new Map<string, BookDocument>();
  const portNow = (): number => (server.address() as AddressInfo).port;
  const folders = [...new Set([dirname(path), folder])];
  const add = (document: BookDocument): BookDocument => {
    documents.set(document.id, document);
    return document;
  };
  const begun = (document: BookDocument): string => {
    const { id, file, isUnsaved } = document;
    const others = [...documents.values()].filter((other) => other.id !== id && other.file.path === file.path);
    const rest: Omit<StartedBook, "opened"> = {
      document: id,
      ...(file === first ? { base: firstBase } : {}),
      isUnsaved,
      others: others.map((other) => other.id),
      unsaved: folders.flatMap((each) => unsavedIn(each)).map(toldOf),
    };
    const opened = file === first ? shownFirst : JSON.stringify(shownBook(file));
    return `{"opened":${opened},${JSON.stringify(rest).slice(1)}`;
  };
  /** A page may be older than this program: then its changes lie on the disk, or it shows the file with other cells. */
  const known = (query: URLSearchParams): BookDocument => {
    const id = query.get("document") ?? "";
    const open = documents.get(id);
    if (open !== undefined) return open;
    for (const each of folders) {
      const left = unsavedIn(each).find((unsaved) => unsaved.id === id);
      if (left !== undefined) return add(documentOf(left, join(each, left.file), bytesOfUnsaved(each, left)));
    }
    if (ID.test(id) && query.get("base") === firstBase) return add(newDocument(id, first));
    throw new InputError(
      "page",
      "a workbook that this program does not have",
      "belongs to a workbook that it has open",
      "open your last save in another tab, and copy there what you changed since: it is still on this page",
    );
  };
  const sent = async (request: IncomingMessage): Promise<ReturnType<typeof readEdits>> =>
    readEdits((await bodyOf(request, LARGEST_EDIT)).toString("utf8"));

  const routes: Readonly<Record<string, Route>> = {
    "GET book": () => Promise.resolve(begun(add(newDocument(newId(), first)))),
    "GET alive": () => Promise.resolve({}),
    "GET new-name": (_, query) => {
      const { saved: earlier, file } = known(query);
      return Promise.resolve({ name: newName(earlier?.path ?? file.path) });
    },
    "POST open": async (request, query) => {
      const name = basename((query.get("name") ?? "").replaceAll("\\", "/"));
      const file = openBookFile(join(folder, name), await bodyOf(request, LARGEST_FILE));
      return begun(add(newDocument(newId(), file)));
    },
    "POST resume": (_, query) => Promise.resolve(begun(add(takenUp(known(query))))),
    "POST discard": (_, query) => {
      const id = query.get("document") ?? "";
      for (const each of folders)
        for (const left of unsavedIn(each).filter((unsaved) => unsaved.id === id)) dropUnsaved(each, left);
      return Promise.resolve({});
    },
    "POST keep": async (request, query) => {
      const { cells, unsaved } = await sent(request);
      add(kept(known(query), cells, unsaved, portNow()));
      return {};
    },
    "POST write": async (request, query): Promise<WrittenBook> => {
      const { cells, write } = await sent(request);
      const { document, answer: opened } = written(known(query), cells, write ?? {});
      add(document);
      return opened;
    },
    "POST take-back": async (request, query) => {
      const { cells } = await sent(request);
      return shownBook(add(takenBack(known(query), cells)).file);
    },
    "POST save": async (request, query) => {
      const { cells } = await sent(request);
      const { document, answer: done } = saved(known(query), cells, query.get("name") ?? undefined);
      add(document);
      return { path: done.path, name: basename(done.path), notes: done.notes };
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
      // A page that goes while it sends waits for no answer.
      if (request.destroyed && !request.complete) return;
      const cause = plainError(error);
      onFault(cause);
      send(response, FAILED, "text/plain", cause.message);
    });
  });
  await listeningAgain(
    server,
    port,
    unsavedIn(dirname(path))
      .filter(({ file }) => file === basename(path))
      .map((each) => each.port),
  );
  const newAddress = () => `http://127.0.0.1:${(server.address() as AddressInfo).port}${guard.newPath()}`;
  return { address: newAddress(), newAddress, close: () => closed(server) };
}

type Route = (request: IncomingMessage, query: URLSearchParams) => Promise<unknown>;

const ID_BYTES = 6;
const ID = /^[0-9a-f]{12}$/;

function newId(): string {
  return randomBytes(ID_BYTES).toString("hex");
}

const LARGEST_FILE = 104_857_600;
/** A long survey whose every cell has changed. */
const LARGEST_EDIT = 268_435_456;
