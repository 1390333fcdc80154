const { rmSync } = require("fs");
const path = require("path");
const { pathToFileURL } = require("url");
const bundled = require("./bundled");
const { DIST } = require("./paths");

/** The local workbook page, in a folder of its own. */
module.exports = (mode) =>
  bundled({
    name: "page",
    mode,
    notices: "page/NOTICES.txt",
    options: {
      entryPoints: [
        { in: "src/page/page.ts", out: "page" },
        { in: "src/page/page.html", out: "page" },
        // Named so that what they hold becomes scripts of their own: the browser reads several at once.
        { in: "src/page/grid/enginePlugins.ts", out: "enginePlugins" },
        { in: "src/page/grid/screenPlugins.ts", out: "screenPlugins" },
        { in: "src/pane/planWorker.ts", out: "planWorker" },
      ],
      loader: { ".html": "copy" },
      plugins: [
        { name: "no hyphenation", setup: withoutHyphenation },
        { name: "without what is never asked", setup: withoutUnasked },
        { name: "patterns of Chinese, Japanese and Korean", setup: withMadePatterns },
      ],
      splitting: true,
      format: "esm",
      target: "es2022",
      outdir: path.join(DIST, "page"),
    },
    plugins: [{ apply: cleared }],
    finish: (file, metafile) => (file.path.endsWith(".html") ? withPreloads(file.text, metafile) : file.contents),
  });

/** Scripts of an earlier build, whose names differ, are not shipped. */
function cleared({ hooks }) {
  hooks.beforeRun.tap("cleared", () => rmSync(path.join(DIST, "page"), { recursive: true, force: true }));
}

/** The grid imports a file of patterns for each of 77 languages. */
function withoutHyphenation({ onResolve }) {
  onResolve({ filter: /^\.\/[a-z0-9-]+-[\w-]{8}\.js$/ }, ({ importer }) =>
    /engine-render[\\/]lib[\\/]es/.test(importer) ? { path: path.join(__dirname, "noHyphenation.js") } : undefined,
  );
}

/** What stands in for packages of the grid, by their names: 420 kB. */
const UNASKED = {
  // Which language a text is in, which hyphenation alone would use.
  "franc-min": 'export const franc = () => "und";',
  // Fonts of the machine, which the server does not let the page read.
  "opentype.js": "export const parse = undefined;",
};

function withoutUnasked({ onResolve, onLoad }) {
  onResolve({ filter: new RegExp(`^(${Object.keys(UNASKED).join("|")})$`) }, ({ path: name }) => ({
    path: name,
    namespace: "unasked",
  }));
  onLoad({ filter: /./, namespace: "unasked" }, ({ path: name }) => ({ contents: UNASKED[name] }));
}

/** The patterns by which the grid breaks lines, as the package makes them of 460 kB of Unicode's tables at each start. */
function withMadePatterns({ onLoad }) {
  onLoad({ filter: /[\\/]cjk-regex[\\/]lib[\\/]index\.js$/ }, async ({ path: file }) => {
    const made = await import(pathToFileURL(file).href);
    const lines = ["all", "letters", "punctuations"].map(
      (name) => `export const ${name} = () => ({ toRegExp: () => ${made[name]().toRegExp()} });`,
    );
    return { contents: lines.join("\n") };
  });
}

/**
 * The page with links to the scripts that its own script imports: without them the browser asks for those only after
 * it has read 6 MB.
 */
function withPreloads(html, { outputs }) {
  const script = Object.entries(outputs).find(([, output]) => output.entryPoint === "src/page/page.ts");
  const imported = script[1].imports.filter(({ kind }) => kind === "import-statement");
  const links = imported.map((each) => `<link rel="modulepreload" href="${path.basename(each.path)}" />\n    `);
  return html.replace('<script type="module"', `${links.join("")}$&`);
}
