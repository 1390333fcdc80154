import { execFile } from "node:child_process";
import { appendFileSync, chmodSync, readdirSync, readFileSync, statSync, writeFileSync } from "node:fs";
import { request } from "node:http";
import { join, resolve } from "node:path";
import { promisify } from "node:util";
import { DEMO_SURVEY } from "../../src/cli/demoSurvey";
import type { OpenedBook, StartedBook } from "../../src/page/openedBook";
import { createWorkbook } from "../../src/workbook/createWorkbook";
import { openWorkbook } from "../../src/workbook/openWorkbook";
import { readSheet } from "../../src/workbook/readSheet";
import { serving } from "./serving";

/** Columns of the survey before any are added. */
const OWN = DEMO_SURVEY[0]!.length;

let served: Awaited<ReturnType<typeof serving>>;
let cookie: string;
/** The workbook of the page that asks. */
let mine: StartedBook;
beforeEach(() => begin(serving()));
afterEach(() => served.close());

async function begin(serve: typeof served | Promise<typeof served>): Promise<void> {
  served = await serve;
  cookie = cookieOf(await ask(new URL(served.address).pathname, { Cookie: "" }));
  mine = await started("/book");
}

async function started(path: string, body?: string | Uint8Array): Promise<StartedBook> {
  return JSON.parse((await ask(path, {}, body)).text) as StartedBook;
}

/** The path of a request for that workbook. */
const of = (what: string, { document, base = "" }: StartedBook = mine): string =>
  `/${what}?document=${document}&base=${base}`;

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
      {
        hostname,
        port,
        path,
        method: body === undefined ? "GET" : "POST",
        // Another program may listen at the same port now.
        agent: false,
        headers: { Host: host, Cookie: cookie, ...headers },
      },
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

/** The name and value of the cookie that an answer sets. */
function cookieOf({ headers }: Answer): string {
  return String(headers["set-cookie"]).split(";")[0]!;
}

const cells = (...list: readonly object[]): string => JSON.stringify({ cells: { cells: list } });
const height = (content: unknown) => ({ sheet: "Survey", row: 2, column: 3, content });

test("it listens on this machine's own address, and lets in one browser alone, with a code that works once", async () => {
  expect(served.address).toMatch(/^http:\/\/127\.0\.0\.1:\d+\/enter\/[0-9a-f]{32}$/);
  const used = new URL(served.address).pathname;
  for (const path of ["/", "/book", "/page.html", `/enter/${"0".repeat(32)}`, used])
    expect([path, (await ask(path, { Cookie: "" })).status]).toEqual([path, 403]);
  for (const other of [`${cookie}0`, cookie.slice(0, -1), cookie.replace(/.$/, "x"), "enclosure="])
    expect([other, (await ask("/book", { Cookie: other })).status]).toEqual([other, 403]);
  expect((await ask("/book", { Cookie: `other=1; ${cookie}` })).status).toBe(200);
  const first = new URL(served.newAddress()).pathname;
  const second = new URL(served.newAddress()).pathname;
  expect((await ask(first, { Cookie: "" })).status).toBe(403);
  expect((await ask(second, { Cookie: "" }, "")).status).toBe(403);
  const entered = await ask(second, { Cookie: "" });
  expect([entered.status, entered.headers["location"], cookieOf(entered)]).toEqual([303, "/", cookie]);
  expect(String(entered.headers["set-cookie"])).toMatch(/; HttpOnly; SameSite=Strict; Path=\/$/);
});

test("an address that is none is answered without a word of the program", async () => {
  for (const path of ["//", "///x", "//[", "/%", "http://", "*"]) {
    const { status, text } = await ask(path, { Cookie: "" });
    expect([path, [400, 403].includes(status!), /\bat\b.*:\d+|Error/.test(text)]).toEqual([path, true, false]);
  }
  expect((await ask("//")).status).toBe(400);
});

test("another user of this machine can read neither the page nor what is saved", async () => {
  expect((await ask(of("save"), {}, cells(height(320)))).status).toBe(200);
  const saved = join(served.folder, "survey-edited.xlsx");
  expect(statSync(saved).mode & 0o077).toBe(0);
  if (process.getuid?.() !== 0) return;
  chmodSync(served.folder, 0o755);
  const { origin } = new URL(served.address);
  const look = `
    const code = (error) => error.code;
    const read = require("fs").promises.readFile(${JSON.stringify(saved)}).then(() => "read", code);
    const page = Promise.all(["/", "/book", ${JSON.stringify(new URL(served.address).pathname)}]
      .map((path) => fetch(${JSON.stringify(origin)} + path).then(({ status }) => status)));
    Promise.all([read, page]).then((seen) => console.log(JSON.stringify(seen)));`;
  const nobody = 65_534;
  const { stdout } = await promisify(execFile)(process.execPath, ["-e", look], { uid: nobody, gid: nobody, cwd: "/" });
  expect(JSON.parse(stdout)).toEqual(["EACCES", [403, 403, 403]]);
});

test("edits that no sheet can hold are refused before anything is done with them", async () => {
  const at = (more: object) => cells({ ...height(1), ...more });
  const sheet = { name: "New", rows: [["a"]] };
  const bad = [
    ...[at({ row: 1_048_577 }), at({ column: 16_385 }), at({ row: 0 }), at({ row: 1.5 }), at({ style: 1e9 })],
    ...[at({ style: -1 }), at({ format: "0".repeat(256) }), at({ content: { formula: 3 } }), at({ extra: 1 })],
    JSON.stringify({ cells: { widths: [{ sheet: "Survey", column: 1, width: 1e308 }] } }),
    JSON.stringify({ cells: { widths: [{ sheet: "Survey", column: 1, width: -1 }] } }),
    JSON.stringify({ cells: { sheets: [{ ...sheet, headingRow: 1e9 }] } }),
    JSON.stringify({ cells: { sheets: [{ ...sheet, widths: [1e308] }] } }),
    ...["{", "null", "[]", '{"cells":[]}', '{"cells":{},"__proto__":{}}', '{"cells":{"cells":"x"}}', "\u0000"],
    '{"cells":{"cells":[{"sheet":"Survey","row":1e999,"column":1,"content":1}]}}',
  ];
  for (const body of bad)
    expect([body.slice(0, 80), (await ask(of("save"), {}, body)).status]).toEqual([body.slice(0, 80), 400]);
  const unknown = await ask(of("save"), {}, at({ style: 60_000 }));
  expect([unknown.status, unknown.text]).toEqual([422, expect.stringContaining("takes one of the")]);
  expect(readdirSync(served.folder)).toEqual([]);
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
    expect([other, (await ask(`/book`, { Host: other })).status]).toEqual([other, 403]);
  for (const from of ["https://evil.example", "null", `http://localhost:${port}`])
    expect([from, (await ask(of("save"), { Origin: from }, cells(height(1)))).status]).toEqual([from, 403]);
  expect(readdirSync(served.folder)).toEqual([]);
  expect((await ask(`/book`, { Origin: origin })).status).toBe(200);
});

test("the name that is offered for a copy is that of no file, and counts on from the last", async () => {
  const offered = async () => (JSON.parse((await ask(of("new-name"))).text) as { name: string }).name;
  expect(await offered()).toBe("survey 2.xlsx");
  writeFileSync(join(served.folder, "survey 2.xlsx"), "");
  expect(await offered()).toBe("survey 3.xlsx");
  await ask(`${of("save")}&name=${encodeURIComponent("Stacks 1923 2")}`, {}, cells(height(320)));
  expect(await offered()).toBe("Stacks 1923 3.xlsx");
  await ask(`${of("save")}&name=${encodeURIComponent("Stacks 1923")}`, {}, cells(height(320)));
  expect(await offered()).toBe("Stacks 1923 3.xlsx");
});

test("a save under a name of one's own goes beside the survey, over no other file, and the next save follows it", async () => {
  writeFileSync(join(served.folder, "other.xlsx"), "another program's");
  const saveAs = async (name: string, value: number) => {
    const { status, text } = await ask(`${of("save")}&name=${encodeURIComponent(name)}`, {}, cells(height(value)));
    return [status, text] as const;
  };
  const refused = [
    "other.xlsx",
    "../x",
    "a/b",
    "a\\b",
    "",
    " ",
    ".hidden",
    "x.",
    "a:b",
    "x.csv",
    "x.XLSM",
    "a\u0007",
    "y".repeat(200),
  ];
  for (const name of refused) expect([name, (await saveAs(name, 1))[0]]).toEqual([name, 422]);
  expect((await saveAs("other", 1))[1]).toContain("press Save as again and give another name");
  expect((await saveAs("a:b", 1))[1]).toContain("such as survey-edited.xlsx; without / ");
  expect(readFileSync(join(served.folder, "other.xlsx"), "utf8")).toBe("another program's");
  expect(readdirSync(served.folder)).toEqual(["other.xlsx"]);
  const named = async (name: string, value: number) =>
    (JSON.parse((await saveAs(name, value))[1]) as { name: string }).name;
  expect([await named(" Round two ", 320), await named("round 3.v2", 325)]).toEqual([
    "Round two.xlsx",
    "round 3.v2.xlsx",
  ]);
  const next = JSON.parse((await ask(of("save"), {}, cells(height(330)))).text) as { name: string };
  expect(next.name).toBe("round 3.v2.xlsx");
  const heightIn = (name: string) =>
    readSheet(openWorkbook(new Uint8Array(readFileSync(join(served.folder, name)))), "Survey").rows[1]![2];
  expect([heightIn("Round two.xlsx"), heightIn("round 3.v2.xlsx"), heightIn("round 3.v2.backup-1.xlsx")]).toEqual([
    320, 330, 325,
  ]);
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
    const { status, text } = await ask(`/${path}`);
    expect([path, [403, 404].includes(status!), text.includes("{")]).toEqual([path, true, false]);
  }
  for (const own of [
    "",
    "page.html",
    "page.js",
    "page.css",
    "functions.js",
    "functions.json",
    "surveyWorker.js",
    ...readdirSync(resolve("dist")).filter((name) => /^survey(?:Asks)?\.[0-9a-f]{8}\.js$/.test(name)),
  ])
    expect([own, (await ask(`/${own}`)).status]).toEqual([own, 200]);
  for (const posted of ["page.html", "book", "../save/"])
    expect([posted, [403, 404].includes((await ask(`/${posted}`, {}, "")).status!)]).toEqual([posted, true]);
});

test("every answer carries a policy that lets nothing in or out", async () => {
  for (const path of ["/", "/book", `/nothing`, "/enter/x"]) {
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
  const first = JSON.parse((await ask(of("save"), {}, cells(height(320)))).text) as { name: string };
  expect(first.name).toBe("survey-edited.xlsx");
  const again = await ask(of("save"), {}, cells(height(330)));
  expect(JSON.parse(again.text)).toEqual({
    path: join(served.folder, "survey-edited.xlsx"),
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
  mine = await started(`/open?name=${encodeURIComponent("../../up/my items.xlsx")}`, book);
  expect(mine.opened.name).toBe("my items.xlsx");
  const saved = await ask(of("save"), {}, cells({ sheet: "Items", row: 2, column: 1, content: 4 }));
  expect(saved.status).toBe(200);
  expect(readdirSync(served.folder)).toEqual(["my items-edited.xlsx"]);
});

test("what cannot be read or written is refused in words", async () => {
  const refused = async (path: string, body: string | Uint8Array) => {
    const { status, text } = await ask(path.startsWith("open") ? `/${path}` : of(path), {}, body);
    return [status, (JSON.parse(text) as { message: string }).message];
  };
  expect(await refused("open?name=x.pdf", "%PDF")).toEqual([422, expect.stringContaining(".xlsx")]);
  expect(await refused("open?name=x.xlsx", "not a zip")).toEqual([422, expect.any(String)]);
  expect(await refused("open", "a,b")).toEqual([422, expect.stringContaining("survey")]);
  expect(await refused("save", "{")).toEqual([400, expect.stringContaining("cannot be read")]);
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
    lastColumn: OWN,
    columns: [{ heading: "mass", cells: Array.from({ length: 40 }, () => 1), format: "0.00" }],
  };
  const body = JSON.stringify({ cells: { cells: [height(321)] }, write: { columns } });
  const written = JSON.parse((await ask(of("write"), {}, body)).text) as { opened: OpenedBook };
  expect(written.opened.tables[0]!.columns.at(-1)).toBe("mass");
  expect(readdirSync(served.folder)).toEqual([]);
  const since = cells({ ...height(322), row: 3 }, { ...height(9), column: OWN + 1 });
  const back = JSON.parse((await ask(of("take-back"), {}, since)).text) as OpenedBook;
  expect(back.tables[0]!.columns).not.toContain("mass");
  const data = back.snapshot.sheets["sheet-1"]!.cellData!;
  expect([data[1]![2]!.v, data[2]![2]!.v, data[1]![OWN]]).toEqual([321, 322, undefined]);
});

const heightIn = (name: string): unknown =>
  readSheet(openWorkbook(new Uint8Array(readFileSync(join(served.folder, name)))), "Survey").rows[1]![2];
const shownHeight = ({ opened }: StartedBook): unknown => opened.snapshot.sheets["sheet-1"]!.cellData![1]![2]!.v;
const kept = (content: unknown): string => JSON.stringify({ cells: { cells: [height(content)] }, unsaved: true });

test("two tabs have a workbook each, and save files of their own", async () => {
  const other = await started("/book");
  expect([other.document === mine.document, other.others]).toEqual([false, [mine.document]]);
  await ask(of("write"), {}, JSON.stringify({ cells: { cells: [height(321)] }, write: {} }));
  const saved = await Promise.all(
    [other, mine].map(async (tab) => JSON.parse((await ask(of("save", tab), {}, cells())).text) as { name: string }),
  );
  expect(saved.map(({ name }) => heightIn(name))).toEqual([312, 321]);
  expect(new Set(saved.map(({ name }) => name)).size).toBe(2);
});

test("what is not saved lies beside the file, and a new program has it again, at the same address", async () => {
  await ask(of("write"), {}, JSON.stringify({ cells: { cells: [height(321)] }, write: {} }));
  await ask(of("keep"), {}, kept(322));
  const [left] = readdirSync(served.folder);
  expect([left, readdirSync(served.folder)]).toEqual([
    `survey.unsaved-${mine.document}.copy`,
    [left, left!.replace("copy", "json")],
  ]);
  for (const name of readdirSync(served.folder)) expect(statSync(join(served.folder, name)).mode & 0o077).toBe(0);
  const { folder, address } = served;
  await served.close();
  const before = mine;
  await begin(serving("survey.csv", undefined, folder));
  expect(new URL(served.address).host).toBe(new URL(address).host);
  expect(mine.unsaved).toEqual([
    { document: before.document, file: "survey.csv", time: expect.any(String) as string, cells: 2 },
  ]);
  // The page that is still open goes on: its program knows its workbook from the disk.
  expect((await ask(of("keep", before), {}, kept(323))).status).toBe(200);
  const again = await started(of("resume", before), "");
  expect([shownHeight(again), again.isUnsaved]).toEqual([323, true]);
  const { name } = JSON.parse((await ask(of("save", before), {}, cells())).text) as { name: string };
  expect([heightIn(name), readdirSync(folder)]).toEqual([323, [name]]);
});

test("unsaved changes of another state of the file are not put into it, and can be thrown away", async () => {
  await ask(of("keep"), {}, kept(322));
  const { folder } = served;
  const before = mine;
  await served.close();
  for (const name of readdirSync(folder)) if (name.endsWith(".copy")) writeFileSync(join(folder, name), "other");
  await begin(serving("survey.csv", undefined, folder));
  const { status, text } = await ask(of("resume", before), {}, "");
  expect([status, text]).toEqual([422, expect.stringContaining("not as it was when they were made")]);
  expect(mine.unsaved).toHaveLength(1);
  expect((await ask(of("discard", before), {}, "")).status).toBe(200);
  expect([(await started("/book")).unsaved, readdirSync(folder)]).toEqual([[], []]);
});

test("a file of unsaved changes that names another folder, or is none, is left alone", async () => {
  const told = { id: "0123456789ab", file: "../x.csv", sha256: "", time: "", port: 1, steps: [] };
  for (const [id, text] of [
    ["0123456789ab", JSON.stringify(told)],
    ["0123456789ac", "{"],
    ["0123456789ad", '{"steps":[{"cells":1}]}'],
  ])
    writeFileSync(join(served.folder, `x.unsaved-${id}.json`), text!);
  expect((await started("/book")).unsaved).toEqual([]);
  expect((await ask("/resume?document=0123456789ab", {}, "")).status).toBe(422);
  expect(readdirSync(served.folder)).toHaveLength(3);
});

test("a save that another program has changed is left as it is, and a note says so", async () => {
  await ask(of("save"), {}, cells(height(320)));
  const first = join(served.folder, "survey-edited.xlsx");
  appendFileSync(first, "more");
  const changed = readFileSync(first);
  const { name, notes } = JSON.parse((await ask(of("save"), {}, cells(height(330)))).text) as {
    name: string;
    notes: string[];
  };
  expect([name, notes]).toEqual([
    "survey-edited-2.xlsx",
    ["survey-edited.xlsx was changed by another program, and stays as it is"],
  ]);
  expect([readFileSync(first).equals(changed), heightIn(name)]).toEqual([true, 330]);
});

test("a page of another program goes on only with its own workbook: with the file as it was, and no writes that are gone", async () => {
  const { folder } = served;
  const cellsAlone = mine;
  const withWrites = await started("/book");
  await ask(of("write", withWrites), {}, JSON.stringify({ cells: { cells: [height(321)] }, write: {} }));
  await ask(of("save", withWrites), {}, cells());
  await served.close();
  await begin(serving("survey.csv", undefined, folder));
  expect((await ask(of("keep", cellsAlone), {}, kept(330))).status).toBe(200);
  const { status, text } = await ask(`/keep?document=${withWrites.document}`, {}, kept(331));
  expect([status, text]).toEqual([422, expect.stringContaining("open your last save")]);
  await ask(of("discard", cellsAlone), {}, "");
  await served.close();
  await begin(serving("survey.csv", Buffer.from("Height,Width,Depth\n1,2,3\n"), folder));
  expect((await ask(of("keep", cellsAlone), {}, kept(330))).status).toBe(422);
  // A survey with the same bytes in another folder is another survey.
  await served.close();
  await begin(serving());
  expect([(await ask(of("keep", cellsAlone), {}, kept(330))).status, readdirSync(served.folder)]).toEqual([422, []]);
});

test("a page that goes while it sends is no fault of the program", async () => {
  const faults = jest.spyOn(console, "error").mockImplementation(() => undefined);
  await served.close();
  await begin(serving());
  const { hostname, port, host } = new URL(served.address);
  const headers = { Host: host, Cookie: cookie, "Content-Length": "100" };
  const asked = request({ hostname, port, path: of("keep"), method: "POST", agent: false, headers });
  asked.on("error", () => undefined);
  await new Promise((sent) => asked.write("{", sent));
  await ask("/alive");
  asked.destroy();
  await ask("/alive");
  expect([faults.mock.calls, readdirSync(served.folder)]).toEqual([[], []]);
  faults.mockRestore();
});
