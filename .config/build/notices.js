const { existsSync, readdirSync, readFileSync } = require("fs");
const path = require("path");
const { ROOT } = require("./paths");

/** Licences that may be shipped: permissive ones, and the one of open fonts. */
const ALLOWED = [
  "0BSD",
  "Apache-2.0",
  "BSD-2-Clause",
  "BSD-3-Clause",
  "CC0-1.0",
  "ISC",
  "MIT",
  "OFL-1.1",
  "Unlicense",
  "Zlib",
];
/** Packages whose package.json names no licence, or not by its usual short name; read in their LICENSE files. */
const KNOWN = { "@univerjs/telemetry": "Apache-2.0", "png-js": "MIT" };

/** Packages whose own build holds the code of others. */
const INLINED = { docx: ["fflate", "nanoid"] };

/**
 * Third-party notices for the bundled files: each package with its licence in full.
 *
 * @param files names of bundled files, absolute or from the root of the repository
 * @throws Error when a package has a licence that is not on the list
 */
const noticesOf = (files) => {
  const packages = new Map();
  for (const file of files) {
    const place = /^(.*node_modules[\\/](?:@[^\\/]+[\\/])?[^\\/]+)[\\/]/.exec(file);
    if (!place) continue;
    const folder = path.resolve(ROOT, place[1]);
    packages.set(folder, true);
    for (const name of INLINED[path.basename(folder)] ?? []) {
      const own = path.join(folder, "node_modules", name);
      packages.set(existsSync(own) ? own : path.join(ROOT, "node_modules", name), true);
    }
  }
  const notices = [...packages.keys()].map(noticeOf).sort((a, b) => (a.title < b.title ? -1 : 1));
  const titles = notices.map(({ title }) => title).join("\n");
  return `Packages in this program, with their licences.\n\n${titles}\n\n${notices.map(({ text }) => text).join("\n")}`;
};

function noticeOf(folder) {
  const { name, version, license, author } = JSON.parse(readFileSync(path.join(folder, "package.json"), "utf8"));
  const licence = KNOWN[name] ?? (typeof license === "object" ? license.type : license);
  if (!isAllowed(licence))
    throw new Error(`${name}: the licence ${licence} is not on the list of .config/build/notices.js`);
  const file = readdirSync(folder).find((each) => /^(licen[sc]e|copying)/i.test(each));
  const whole = file && existsSync(path.join(folder, file)) ? readFileSync(path.join(folder, file), "utf8").trim() : "";
  const by = typeof author === "object" ? author.name : author;
  const text = whole === "" ? `${licence}${by ? `, ${by}` : ""}` : whole;
  const title = `${name} ${version} (${licence})`;
  return { title, text: `${"-".repeat(72)}\n${title}\n\n${text}\n` };
}

/** `(MIT AND Zlib)` needs both, `(MIT OR GPL-3.0)` one. */
function isAllowed(licence) {
  if (typeof licence !== "string") return false;
  const either = licence.replace(/[()]/g, "").split(/ OR /);
  return either.some((each) => each.split(/ AND /).every((one) => ALLOWED.includes(one.trim())));
}

module.exports = { isAllowed, noticesOf };
