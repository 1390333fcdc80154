import { readdirSync, readFileSync } from "node:fs";
import { request } from "node:http";
import { join } from "node:path";
import type { OpenedBook } from "../../src/page/openedBook";
import { createWorkbook } from "../../src/workbook/createWorkbook";
import { openWorkbook } from "../../src/workbook/openWorkbook";
import { readSheet } from "../../src/workbook/readSheet";
import { serving } from "./serving";

let served: Awaited<ReturnType<typeof serving>>;
beforeEach(async () => {
  served = await serving();
});
afterEach(() => served.close());

interface Answer {
  readonly status: number | undefined;
  readonly headers: Readonly<Record<string, string | string[] | undefined>>;
  readonly text: string;
}

/** Asks with a path and headers just as given: a browser or `fetch` would tidy them. */
function ask(
  path: string,
  headers: Readonly<Record<string, string>> = {},
  body?: string | Uint8Array,
): Promise<Answer> {
  const { hostname, port, host } = new URL(served.address);
  return new Promise((resolve, reject) => {
    const asked = request(
      { hostname, port, path, method: body === undefined ? "GET" : "POST", headers: { Host: host, ...headers } },
      (answer) => {
        let text = "";
        answer.setEncoding("utf8");
        answer.on("data", (piece: string) => (text += piece));
        answer.on("end", () => resolve({ status: answer.statusCode, headers: answer.headers, text }));
      },
    );
    asked.on("error", reject);
    asked.end(body);
  });
}

const secret = (): string => new URL(served.address).pathname;
const cells = (...list: readonly object[]): string => JSON.stringify({ cells: { cells: list } });
const height = (content: unknown) => ({ sheet: "Survey", row: 2, column: 3, content });

test("it listens on this machine's own address, under a secret path", async () => {
  expect(served.address).toMatch(/^http:\/\/127\.0\.0\.1:\d+\/[0-9a-f]{32}\/$/);
  for (const path of ["/", "/book", "/page.html", `/${"0".repeat(32)}/book`, "//book"])
    expect([path, (await ask(path)).status]).toEqual([path, 403]);
  expect((await ask(`${secret()}book`)).status).toBe(200);
});

test("a request under another name, or from another page, is refused before it does anything", async () => {
  const { host, origin } = new URL(served.address);
  const port = host.split(":")[1]!;
  for (const other of [
    "evil.example",
    `evil.example:${port}`,
    `localhost:${port}`,
    "127.0.0.1",
    `127.0.0.1:${port}.evil.example`,
  ])
    expect([other, (await ask(`${secret()}book`, { Host: other })).status]).toEqual([other, 403]);
  for (const from of ["https://evil.example", "null", `http://localhost:${port}`])
    expect([from, (await ask(`${secret()}save`, { Origin: from }, cells(height(1)))).status]).toEqual([from, 403]);
  expect(readdirSync(served.folder)).toEqual([]);
  expect((await ask(`${secret()}book`, { Origin: origin })).status).toBe(200);
});

test("nothing but the page's own files is sent", async () => {
  const paths = [
    "../package.json",
    "..%2fpackage.json",
    "%2e%2e/%2e%2e/package.json",
    "....//package.json",
    "/etc/passwd",
    "enclosure-columns.js",
    "manifest.xml",
    "page/page.js",
    "icons/../functions.js/",
    "page.js%00.html",
    "__proto__",
    "constructor",
  ];
  for (const path of paths) {
    const { status, text } = await ask(secret() + path);
    expect([path, [403, 404].includes(status!), text.includes("{")]).toEqual([path, true, false]);
  }
  for (const own of ["", "page.html", "page.js", "page.css", "functions.js", "functions.json", "survey.js"])
    expect([own, (await ask(secret() + own)).status]).toEqual([own, 200]);
  for (const posted of ["page.html", "book", "../save"])
    expect([posted, [403, 404].includes((await ask(secret() + posted, {}, "")).status!)]).toEqual([posted, true]);
});

test("every answer carries a policy that lets nothing in or out", async () => {
  for (const path of [secret(), `${secret()}book`, `${secret()}nothing`, "/"]) {
    const { headers } = await ask(path);
    const policy = String(headers["content-security-policy"]);
    expect(policy).toContain("default-src 'none'");
    expect(policy).toContain("frame-ancestors 'none'");
    expect(policy).not.toMatch(/unsafe-eval|script-src[^;]*unsafe|https?:|\*/);
    expect(headers["x-content-type-options"]).toBe("nosniff");
    expect(headers["referrer-policy"]).toBe("no-referrer");
    expect(headers["access-control-allow-origin"]).toBeUndefined();
  }
});

test("a save is a new file beside the survey; the next save replaces it and keeps a backup", async () => {
  const first = JSON.parse((await ask(`${secret()}save`, {}, cells(height(320)))).text) as { name: string };
  expect(first.name).toBe("survey-edited.xlsx");
  const again = await ask(`${secret()}save`, {}, cells(height(330)));
  expect(JSON.parse(again.text)).toEqual({
    name: "survey-edited.xlsx",
    notes: ["the save before is kept as survey-edited.backup-1.xlsx"],
  });
  expect(readdirSync(served.folder).sort()).toEqual(["survey-edited.backup-1.xlsx", "survey-edited.xlsx"]);
  const heightIn = (name: string) =>
    readSheet(openWorkbook(new Uint8Array(readFileSync(join(served.folder, name)))), "Survey").rows[1]![2];
  expect([heightIn("survey-edited.backup-1.xlsx"), heightIn("survey-edited.xlsx")]).toEqual([320, 330]);
});

test("a file chosen in the page is opened, and saved where the server was started, whatever its name says", async () => {
  const book = createWorkbook([{ name: "Items", rows: [["Height"], [3]] }]);
  const { status, text } = await ask(`${secret()}open?name=${encodeURIComponent("../../up/my items.xlsx")}`, {}, book);
  expect([status, (JSON.parse(text) as OpenedBook).name]).toEqual([200, "my items.xlsx"]);
  const saved = await ask(`${secret()}save`, {}, cells({ sheet: "Items", row: 2, column: 1, content: 4 }));
  expect(saved.status).toBe(200);
  expect(readdirSync(served.folder)).toEqual(["my items-edited.xlsx"]);
});

test("what cannot be read or written is refused in words", async () => {
  const refused = async (path: string, body: string | Uint8Array) => {
    const { status, text } = await ask(secret() + path, {}, body);
    return [status, (JSON.parse(text) as { message: string }).message];
  };
  expect(await refused("open?name=x.pdf", "%PDF")).toEqual([422, expect.stringContaining(".xlsx")]);
  expect(await refused("open?name=x.xlsx", "not a zip")).toEqual([422, expect.any(String)]);
  expect(await refused("open", "a,b")).toEqual([422, expect.stringContaining("survey")]);
  expect(await refused("save", "{")).toEqual([422, expect.stringContaining("cannot be read")]);
  expect(await refused("save", cells({ ...height(1), sheet: "Nowhere" }))).toEqual([
    422,
    expect.stringContaining("Nowhere"),
  ]);
  expect(await refused("save", cells(height("x".repeat(40_000))))).toEqual([422, expect.stringContaining("32767")]);
  expect(readdirSync(served.folder)).toEqual([]);
});

test("a write of the pane changes the working copy alone, and can be taken back", async () => {
  const columns = {
    sheet: "Survey",
    table: "Survey",
    headingRow: 1,
    firstRow: 2,
    lastRow: 41,
    lastColumn: 16,
    columns: [{ heading: "mass", cells: Array.from({ length: 40 }, () => 1), format: "0.00" }],
  };
  const body = JSON.stringify({ cells: { cells: [height(321)] }, write: { columns } });
  const written = JSON.parse((await ask(`${secret()}write`, {}, body)).text) as { opened: OpenedBook };
  expect(written.opened.tables[0]!.columns.at(-1)).toBe("mass");
  expect(readdirSync(served.folder)).toEqual([]);
  const since = cells({ ...height(322), row: 3 }, { ...height(9), column: 17 });
  const back = JSON.parse((await ask(`${secret()}take-back`, {}, since)).text) as OpenedBook;
  expect(back.tables[0]!.columns).not.toContain("mass");
  const data = back.snapshot.sheets["sheet-1"]!.cellData!;
  expect([data[1]![2]!.v, data[2]![2]!.v, data[1]![16]]).toEqual([321, 322, undefined]);
});
