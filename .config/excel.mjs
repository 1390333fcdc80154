/*
 * npm run excel            Excel on this machine (Windows or Mac), with the add-in
 * npm run excel -- web     only serves it, for Excel on the web: upload dist/manifest.xml there
 * npm run excel -- stop    takes the add-in out of Excel again
 *
 * The tools that talk to Excel are fetched by npx: they are large, and nobody else needs them.
 */
import { spawn, spawnSync } from "node:child_process";
import { existsSync, readFileSync } from "node:fs";
import { createServer } from "node:https";
import { homedir } from "node:os";
import { extname, join, resolve, sep } from "node:path";

const PORT = 3000;
const DIST = resolve("dist");
const CERTIFICATES = join(homedir(), ".office-addin-dev-certs");
const TYPES = {
  ".html": "text/html; charset=utf-8",
  ".js": "text/javascript; charset=utf-8",
  ".css": "text/css; charset=utf-8",
  ".json": "application/json; charset=utf-8",
  ".xml": "text/xml; charset=utf-8",
  ".png": "image/png",
};

const run = (command, ...args) => {
  const { status } = spawnSync(command, args, { stdio: "inherit", shell: process.platform === "win32" });
  if (status !== 0) process.exit(status ?? 1);
};

const DEBUGGING = ["--yes", "office-addin-debugging"];
const MANIFEST = "dist/manifest.xml";
const mode = process.argv[2];
if (mode !== undefined && !["web", "stop"].includes(mode)) {
  console.error(`excel: got ${mode}; give web, stop or nothing`);
  process.exit(2);
}
if (mode === "stop") {
  if (existsSync(MANIFEST)) run("npx", ...DEBUGGING, "stop", MANIFEST);
  else console.log(`${MANIFEST} is not there, so nothing of it is in Excel.`);
  process.exit(0);
}

run("npx", "webpack", "--mode", "development", "--no-stats");
run("npx", "--yes", "office-addin-dev-certs", "install");
const [key, cert] = ["localhost.key", "localhost.crt"].map((name) => join(CERTIFICATES, name));
if (!existsSync(key) || !existsSync(cert)) {
  console.error(`excel: no certificate in ${CERTIFICATES}; run npx office-addin-dev-certs install`);
  process.exit(2);
}

createServer({ key: readFileSync(key), cert: readFileSync(cert) }, (request, response) => {
  const path = resolve(DIST, `.${new URL(request.url ?? "/", "https://localhost").pathname}`);
  if (!path.startsWith(DIST + sep) || extname(path) === "" || !existsSync(path)) {
    response.writeHead(404).end();
    return;
  }
  // Excel on the web loads the functions from its own origin.
  response.writeHead(200, {
    "Content-Type": TYPES[extname(path)] ?? "application/octet-stream",
    "Access-Control-Allow-Origin": "*",
    "Cache-Control": "no-store",
  });
  response.end(readFileSync(path));
}).listen(PORT, "localhost", () => {
  console.log(`The add-in is served at https://localhost:${PORT}. Ctrl-C ends it.`);
  if (mode === "web") return console.log(`In Excel on the web upload ${MANIFEST}: Home, Add-ins, My Add-ins.`);
  console.log("npm run excel -- stop takes it out of Excel again.");
  // Beside the server: Excel asks it for the files while it starts.
  spawn("npx", [...DEBUGGING, "start", MANIFEST, "desktop"], { stdio: "inherit", shell: process.platform === "win32" })
    .on("error", (error) => console.error(`excel: ${error.message}`))
    .on("exit", (status) => status !== 0 && console.error("excel: Excel did not take the add-in; see above"));
});
