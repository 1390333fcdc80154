import { readFileSync } from "node:fs";
import { createServer, type Server } from "node:http";
import type { AddressInfo } from "node:net";
import { extname, join } from "node:path";
import type { Browser, Page } from "playwright-core";
import { version } from "../../package.json";
import { TYPES } from "../../src/page/server/pageFiles";
import { hostBridge, type InvocationResult } from "../runtime/hostBridge";
import { launched } from "./browser";

const ADDIN = "dist/addin";
const MICROSOFT = "https://appsforoffice.microsoft.com/lib/1/hosted";
const OFFICE = `${MICROSOFT}/office.js`;
const RUNTIME = "custom-functions-runtime.debug.js";
/** Office.js adds the script of the host in this way. */
const LOADER = `document.write('<script src="${MICROSOFT}/${RUNTIME}"></' + "script>")`;

/** The folder below the site, as HOSTING.md says. */
const SITE = "/enclosures";
const guide = readFileSync(join(ADDIN, "HOSTING.md"), "utf8");
/** The headers of its table that are for all files or for scripts. */
const HEADERS = ["Access-Control-Allow-Origin", "Cache-Control"].map((name) => {
  const value = new RegExp(`\\| \`${name}: ([^\`]+)\``).exec(guide)?.[1];
  if (value === undefined) throw new Error(`HOSTING.md names no ${name}`);
  return [name, value] as const;
});

let server: Server;
let browser: Browser;
let site: string;
const missing: string[] = [];
beforeAll(async () => {
  server = createServer(({ url = "" }, response) => {
    const { pathname } = new URL(url, "http://localhost");
    try {
      const bytes = readFileSync(join(ADDIN, pathname.slice(SITE.length)));
      const type = TYPES[extname(pathname)] ?? "application/octet-stream";
      response.writeHead(200, { ...Object.fromEntries(HEADERS), "Content-Type": type }).end(bytes);
    } catch {
      missing.push(pathname);
      response.writeHead(404).end();
    }
  });
  await new Promise<void>((listening) => server.listen(0, "localhost", listening));
  site = `http://localhost:${(server.address() as AddressInfo).port}${SITE}`;
  browser = await launched();
});
afterAll(async () => {
  await browser?.close();
  server?.close();
});

/** The page that Excel opens, with Microsoft's runtime in it, which calls the functions as Excel asks it to. */
async function pane(): Promise<{
  page: Page;
  wrong: readonly string[];
  call: (id: string, args: readonly unknown[]) => Promise<InvocationResult>;
}> {
  const waiting = new Map<number, (result: InvocationResult) => void>();
  const { native, invoke } = hostBridge((result) => waiting.get(result.id)?.(result));
  const page = await browser.newPage();
  const wrong: string[] = [];
  page.on("console", (message) => message.type() === "error" && wrong.push(message.text()));
  page.on("pageerror", (error) => wrong.push(error.message));
  const contentType = "text/javascript";
  // Its script of measurements has no part in an answer.
  await page.route(`${MICROSOFT.replace("/lib/1/hosted", "")}/**`, (route) => route.fulfill({ body: "", contentType }));
  await page.route(OFFICE, (route) => route.fulfill({ body: LOADER, contentType }));
  await page.route(`${MICROSOFT}/${RUNTIME}`, (route) =>
    route.fulfill({ path: `node_modules/@microsoft/office-js/dist/${RUNTIME}`, contentType }),
  );
  await page.exposeFunction("toHost", (text: string) => native.sendMessageToHost(text));
  await page.addInitScript(() => {
    const own = window as unknown as { _richApiNativeBridge: object; toHost: (text: string) => void };
    own._richApiNativeBridge = { sendMessageToHost: (text: string) => own.toHost(text) };
  });
  native.onMessageFromHost = (text) =>
    void page.evaluate((message) => {
      const { _richApiNativeBridge: bridge } = window as unknown as {
        _richApiNativeBridge: { onMessageFromHost: (text: string) => void };
      };
      bridge.onMessageFromHost(message);
    }, text);
  await page.goto(`${site}/${version}/pane.html`);
  let last = 0;
  const call = (id: string, args: readonly unknown[]) =>
    new Promise<InvocationResult>((resolve) => {
      waiting.set(++last, resolve);
      invoke([[last, id, args, 0]]);
    });
  return { page, call, wrong };
}

test("the folder on a plain web server: pane, functions and the thread of whole surveys all load, and answer", async () => {
  const { page, call, wrong } = await pane();
  const declared = await page.evaluate(
    async () => (await fetch("functions.json")).json() as Promise<{ functions: [] }>,
  );
  expect(declared.functions.length).toBeGreaterThan(20);
  expect(await call("MASS", [300, 210, 40, "tray", null])).toMatchObject({ ok: true });
  const items = [
    ["title", "height mm", "width mm", "depth mm", "enclosure"],
    ["Atlas", 300, 210, 40, "tray"],
  ];
  const survey = await call("SURVEY", [items, [["mass"]], null]);
  expect(survey).toMatchObject({ ok: true, value: [["mass"], [expect.any(Number)]] });
  expect(page.workers().map((worker) => worker.url())).toEqual([`${site}/${version}/surveyWorker.js`]);
  expect([wrong, missing]).toEqual([[], []]);
});

test("every address of the manifest is answered there, and its pages lead on", async () => {
  const manifest = readFileSync(join(ADDIN, "manifest.xml"), "utf8");
  const addresses = [...manifest.matchAll(/DefaultValue="https:\/\/[^/"]+(\/[^"]+)"/g)].map(([, path]) => path!);
  expect(addresses.length).toBeGreaterThan(8);
  // The site of the manifest may be a folder of another one.
  const inFolder = new Set(addresses.map((path) => path.slice(path.indexOf(`/${version}/`))));
  for (const path of inFolder) expect([path, (await fetch(`${site}${path}`)).status]).toEqual([path, 200]);
  const page = await browser.newPage();
  await page.goto(`${site}/${version}/support.html`);
  await page.getByRole("link", { name: /^What happens/ }).click();
  expect(await page.locator("strong").first().textContent()).toBe("Nothing leaves the computer.");
});

test("without Microsoft's script the pane says that Excel did not answer", async () => {
  const page = await browser.newPage();
  await page.route(OFFICE, (route) => route.abort());
  await page.goto(`${site}/${version}/pane.html`);
  expect(await page.locator("main").textContent()).toMatch(/^Excel did not answer/);
});

test("Excel on the web may read the functions from its own address", async () => {
  const page = await browser.newPage();
  const read = await page.evaluate(
    async (address) => (await fetch(address)).headers.get("content-type"),
    `${site}/${version}/functions.json`,
  );
  expect(read).toMatch(/^application\/json/);
});
