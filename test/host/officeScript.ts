import { readFileSync } from "node:fs";

/** The Excels that Microsoft writes a script for, and how each differs on the wire. */
export const EXCELS = {
  "Excel for Windows": { script: "excel-win32-16.01.js", platform: "PC", pieces: 32_000, most: Infinity },
  "Excel for Mac": { script: "excel-mac-16.00.js", platform: "Mac", pieces: Infinity, most: Infinity },
  // By Microsoft's documentation on resource limits: 5 MB a request, and 5 MB an answer.
  "Excel on the web": { script: "excel-web-16.00.js", platform: "OfficeOnline", pieces: Infinity, most: 5_000_000 },
} as const;

export type ExcelName = keyof typeof EXCELS;

/** What `executeRichApiRequestAsync` gives back: status, headers and body of an answer, or the number of an error. */
export type Answer =
  | {
      readonly status: "succeeded";
      readonly value: { readonly data: readonly [200, null, string | readonly string[]] };
    }
  | { readonly status: "failed"; readonly error: { readonly code: number; readonly message: string } };

/** The place of the request's JSON in the message. */
const BODY = 4;

/** What a page asks of the Excel that it is in. */
export interface Host {
  readonly answer: (body: string) => Answer;
  readonly isSetSupported: (set: string, version: string) => boolean;
}

type Listener = (argument: unknown) => void;

/** A page with Microsoft's own script in it, as it is in the task pane. */
export interface OfficePage {
  readonly Excel: Record<string, unknown>;
  readonly Office: object;
  /** Sends an event by Microsoft's number, of the workbook unless it names another target. */
  readonly send: (eventType: number, event: object, targetId?: string) => void;
  /** Whoever follows the selection, which is an event of the document. */
  readonly selecting: ReadonlySet<Listener>;
}

/** Runs the script that Excel itself loads, over a host of ours. */
export function officePage(name: ExcelName, { answer, isSetSupported }: Host): OfficePage {
  const { script, platform } = EXCELS[name];
  const page = emptyPage(script);
  const { Excel, OSF, Office } = compiled(script).call(page, page);
  const messages = new Set<Listener>();
  const selecting = new Set<Listener>();
  type Request = readonly unknown[];
  OSF.DDA.RichApi.executeRichApiRequestAsync = (request: Request, callback: (answer: Answer) => void) =>
    callback(answer(String(request[BODY])));
  OSF.DDA.RichApi.richApiMessageManager = {
    register: (listener: Listener) => Promise.resolve(void messages.add(listener)),
  };
  const context = {
    platform,
    requirements: { isSetSupported },
    document: {
      addHandlerAsync: (_: string, listener: Listener, callback: Listener) => {
        selecting.add(listener);
        callback({ status: "succeeded" });
      },
      removeHandlerAsync: (_: string, { handler }: { handler: Listener }, callback: Listener) => {
        selecting.delete(handler);
        callback({ status: "succeeded" });
      },
    },
  };
  // In Excel, office.js has made it before it loads this script.
  OSF._OfficeAppFactory = { getContext: () => context };
  const send: OfficePage["send"] = (messageType, event, targetId = "Workbook") => {
    const entry = { messageCategory: EVENTS, messageType, targetId, message: JSON.stringify(event) };
    for (const listener of messages) listener({ entries: [entry] });
  };
  return { Excel, Office, send, selecting };
}

/** The category of a message that is an event. */
const EVENTS = 65_536;

interface Namespaces {
  readonly Excel: Record<string, unknown>;
  readonly Office: object;
  readonly OSF: { readonly DDA: { readonly RichApi: Record<string, unknown> }; _OfficeAppFactory?: object };
}

const SCRIPTS = new Map<string, (page: object) => Namespaces>();

/** The script as a function of its page: read and compiled once, run for each page. */
function compiled(script: string): (page: object) => Namespaces {
  const known = SCRIPTS.get(script);
  if (known !== undefined) return known;
  const path = `node_modules/@microsoft/office-js/dist/${script}`;
  // Its errors are then of this realm, as in a page, and its names stay off this global object.
  // eslint-disable-next-line @typescript-eslint/no-implied-eval
  const made = new Function("page", `with (page) {${readFileSync(path, "utf8")}\n;return { Excel, Office, OSF };}`);
  SCRIPTS.set(script, made as (page: object) => Namespaces);
  return compiled(script);
}

/** As much of a browser's page as the script touches before it is asked anything. */
function emptyPage(script: string): object {
  const nothing = () => undefined;
  const source = `https://addin.example/${script}`;
  const element = () => ({
    setAttribute: nothing,
    getAttribute: () => source,
    appendChild: nothing,
    style: {},
    src: source,
  });
  const location = { href: "https://addin.example/pane.html", search: "", hash: "", protocol: "https:" };
  const page: Record<string, unknown> = {
    // The script declares these with `var` and then reads them from the window.
    Excel: undefined,
    OfficeExtension: undefined,
    setTimeout,
    clearTimeout,
    Promise,
    location,
    history: {},
    navigator: { userAgent: "", language: "en-US" },
    addEventListener: nothing,
    removeEventListener: nothing,
    document: {
      readyState: "complete",
      location,
      addEventListener: nothing,
      createElement: element,
      querySelectorAll: () => [],
      getElementsByTagName: () => [element()],
      head: element(),
      body: element(),
    },
  };
  return Object.assign(page, { window: page, self: page, top: page, parent: page });
}
