const { rmSync } = require("fs");
const path = require("path");
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
      plugins: [{ name: "no hyphenation", setup: withoutHyphenation }],
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
