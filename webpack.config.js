const { Buffer } = require("buffer");
const { chmodSync, readFileSync, readdirSync } = require("fs");
const path = require("path");
const CopyPlugin = require("copy-webpack-plugin");
const { generateCustomFunctionsMetadata } = require("custom-functions-metadata");
const esbuild = require("esbuild");
const HtmlPlugin = require("html-webpack-plugin");
const { BannerPlugin, Compilation, WebpackError, sources } = require("webpack");

const DEVELOPMENT_ADDRESS = "https://localhost:3000";
const PLACEHOLDER_ADDRESS = "https://enclosure-columns.example";
const COMMAND_LINE = "./src/cli/main.ts";
const DIST = path.join(__dirname, "dist");
/** The build for browsers: the same bytes of PDF there and on the command line. */
const PDFKIT = path.join(__dirname, "node_modules/pdfkit/js/pdfkit.browser.mjs");

module.exports = (_env, { mode = "production" }) => [addIn(mode, addressFor(mode)), page(mode), commandLine(mode)];

const addIn = (mode, address) => ({
  ...common(mode),
  name: "add-in",
  target: "web",
  entry: {
    functions: "./functions/index.ts",
    pane: "./src/pane/pane.ts",
    planWorker: "./src/pane/planWorker.ts",
  },
  // Scripts that are loaded later lie beside the page.
  output: { path: DIST, filename: "[name].js", publicPath: "", compareBeforeEmit: false },
  plugins: [
    { apply: functionsJson },
    // The shared runtime is this one page: it holds the cell functions and the pane.
    new HtmlPlugin({ filename: "pane.html", template: "./src/pane/pane.html", chunks: ["functions", "pane"] }),
    new CopyPlugin({
      patterns: [
        { from: "src/pane/pane.css" },
        { from: "src/pane/paneFrame.css" },
        { from: "manifest/icons/*.png", to: "icons/[name][ext]" },
        {
          from: "manifest/manifest.xml",
          transform: (text) => text.toString().replaceAll(DEVELOPMENT_ADDRESS, address),
        },
      ],
    }),
  ],
});

/** The local workbook page, in a folder of its own. */
const page = (mode) => ({
  mode,
  context: __dirname,
  name: "page",
  entry: {},
  output: { path: DIST, compareBeforeEmit: false },
  // esbuild has shrunk it already.
  optimization: { minimize: false },
  performance: { hints: false },
  plugins: [{ apply: pageBundle }],
});

const commandLine = (mode) => ({
  ...common(mode),
  name: "command line",
  target: "node20",
  entry: COMMAND_LINE,
  output: {
    path: DIST,
    filename: "enclosure-columns.js",
    chunkFilename: "enclosure-columns-[name].js",
    compareBeforeEmit: false,
  },
  optimization: { splitChunks: false },
  plugins: [
    new BannerPlugin({ banner: "#!/usr/bin/env node", raw: true, entryOnly: true }),
    // Fonts of src/paper/fonts.ts, for the command line and for the pane.
    new CopyPlugin({
      patterns: [
        ...[
          "@embedpdf/fonts-latin/fonts/NotoSans-Regular.ttf",
          "@embedpdf/fonts-latin/fonts/NotoSans-Bold.ttf",
          "@embedpdf/fonts-arabic/fonts/NotoNaskhArabic-Regular.ttf",
          "@embedpdf/fonts-hebrew/fonts/NotoSansHebrew-Regular.ttf",
          "@embedpdf/fonts-sc/fonts/NotoSansHans-Regular.otf",
          "@expo-google-fonts/gowun-dodum/400Regular/GowunDodum_400Regular.ttf",
        ].map((file) => ({ from: `node_modules/${file}`, to: "fonts/[name][ext]" })),
        { from: "node_modules/@embedpdf/fonts-latin/LICENSE", to: "fonts/LICENSE-Noto.txt", toType: "file" },
        {
          from: "node_modules/@expo-google-fonts/gowun-dodum/LICENSE_FONT",
          to: "fonts/LICENSE-GowunDodum.txt",
          toType: "file",
        },
      ],
    }),
    {
      apply: (compiler) =>
        compiler.hooks.afterEmit.tap("executable", () => chmodSync(path.join(DIST, "enclosure-columns.js"), 0o755)),
    },
  ],
});

// Types are checked by `npm run types`; tsconfig.json says noEmit because nothing but webpack emits.
const common = (mode) => ({
  mode,
  context: __dirname,
  devtool: mode === "production" ? false : "source-map",
  performance: { hints: false },
  resolve: { extensions: [".ts", ".tsx", ".js"], alias: { pdfkit$: PDFKIT } },
  module: {
    rules: [
      {
        test: /\.tsx?$/,
        loader: "ts-loader",
        options: { transpileOnly: true, compilerOptions: { noEmit: false } },
      },
      // Its colour profile is for archives, which these pages do not claim to be.
      { test: /pdfkit[\\/].*\.mjs$/, parser: { url: false } },
    ],
  },
});

/** Emits functions.json from every file of functions/ that declares a cell function. */
function functionsJson(compiler) {
  const folder = path.join(__dirname, "functions");
  compiler.hooks.thisCompilation.tap("functions.json", (compilation) => {
    compilation.contextDependencies.add(folder);
    const stage = Compilation.PROCESS_ASSETS_STAGE_ADDITIONAL;
    compilation.hooks.processAssets.tapPromise({ name: "functions.json", stage }, async () => {
      const files = readdirSync(folder).filter((name) => name.endsWith(".ts"));
      const paths = files.map((name) => path.join(folder, name));
      const declaring = paths.filter((file) => readFileSync(file, "utf8").includes("@customfunction"));
      const { metadataJson, errors } = await generateCustomFunctionsMetadata(declaring).catch((error) => ({
        errors: [`${error.message}; is there a {@link} in a doc comment?`],
      }));
      compilation.errors.push(...errors.map((message) => new WebpackError(`functions.json: ${message}`)));
      if (!metadataJson) return;
      // The generator never writes this flag, without which a cell holding an error keeps a function from running.
      const metadata = { allowErrorForDataTypeAny: true, ...JSON.parse(metadataJson) };
      compilation.emitAsset("functions.json", new sources.RawSource(JSON.stringify(metadata, null, 2)));
    });
  });
}

/** Bundles the page with esbuild: its spreadsheet is 12 MB of sources, for which webpack takes minutes. */
function pageBundle(compiler) {
  compiler.hooks.thisCompilation.tap("page", (compilation) => {
    compilation.contextDependencies.add(path.join(__dirname, "src"));
    const stage = Compilation.PROCESS_ASSETS_STAGE_ADDITIONAL;
    compilation.hooks.processAssets.tapPromise({ name: "page", stage }, async () => {
      const { outputFiles, metafile, errors } = await esbuild
        .build({
          absWorkingDir: __dirname,
          entryPoints: [
            { in: "src/page/page.ts", out: "page" },
            { in: "src/page/page.html", out: "page" },
            // Named so that what they hold becomes scripts of their own: the browser reads several at once.
            { in: "src/page/grid/enginePlugins.ts", out: "enginePlugins" },
            { in: "src/page/grid/screenPlugins.ts", out: "screenPlugins" },
            { in: "src/pane/planWorker.ts", out: "planWorker" },
          ],
          alias: { pdfkit: PDFKIT },
          loader: { ".html": "copy" },
          bundle: true,
          splitting: true,
          format: "esm",
          target: "es2022",
          minify: compiler.options.mode === "production",
          sourcemap: compiler.options.mode !== "production",
          outdir: path.join(DIST, "page"),
          write: false,
          metafile: true,
          logLevel: "silent",
        })
        .catch(({ errors }) => ({ outputFiles: [], errors }));
      compilation.errors.push(
        ...errors.map(({ text, location }) => new WebpackError(`page: ${text} ${location?.file}:${location?.line}`)),
      );
      for (const { path: file, contents, text } of outputFiles) {
        const content = file.endsWith(".html") ? withPreloads(text, metafile) : Buffer.from(contents);
        compilation.emitAsset(path.relative(DIST, file), new sources.RawSource(content));
      }
    });
  });
}

/** The page with what its script imports named at its head: else the browser asks for it only when it has read 6 MB. */
function withPreloads(html, { outputs }) {
  const script = Object.entries(outputs).find(([, output]) => output.entryPoint === "src/page/page.ts");
  const imported = script[1].imports.filter(({ kind }) => kind === "import-statement");
  const links = imported.map((each) => `<link rel="modulepreload" href="${path.basename(each.path)}" />\n    `);
  return html.replace('<script type="module"', `${links.join("")}$&`);
}

/** Where the add-in will be served from: ENCLOSURE_ADDRESS, without a slash at the end. */
function addressFor(mode) {
  const address = process.env.ENCLOSURE_ADDRESS || (mode === "production" ? PLACEHOLDER_ADDRESS : DEVELOPMENT_ADDRESS);
  if (!/^https:\/\/[^\s"<>&]*[^\s"<>&/]$/.test(address))
    throw new Error(`ENCLOSURE_ADDRESS: got ${address}; give an https address without a slash at the end`);
  if (mode === "production" && /localhost|127\.0\.0\.1/.test(address))
    throw new Error(`ENCLOSURE_ADDRESS: got ${address} in a production build; give the address it will be served from`);
  return address;
}
