const CopyPlugin = require("copy-webpack-plugin");
const HtmlPlugin = require("html-webpack-plugin");
const MinimizerPlugin = require("minimizer-webpack-plugin");
const { DEVELOPMENT_ADDRESS, servedFrom } = require("./address");
const { Compilation, DefinePlugin, WebpackError, sources } = require("webpack");
const { clearedChunks, recorded } = require("./deployed");
const functionsJson = require("./functionsJson");
const { noticesOf } = require("./notices");
const manifestFor = require("./manifestFor");
const { DIST, REPLACED, ROOT, VERSION } = require("./paths");

/** The licences of the bundled packages; one that may not be shipped fails the build. */
function notices(compiler) {
  compiler.hooks.thisCompilation.tap("notices", (compilation) => {
    const stage = Compilation.PROCESS_ASSETS_STAGE_ADDITIONAL;
    compilation.hooks.processAssets.tap({ name: "notices", stage }, () => {
      const files = [...compilation.modules].flatMap((module) => module.nameForCondition() ?? []);
      try {
        compilation.emitAsset("NOTICES-add-in.txt", new sources.RawSource(noticesOf(files)));
      } catch (error) {
        compilation.errors.push(new WebpackError(`add-in: ${error.message}`));
      }
    });
  });
}

/** The add-in: webpack bundles it, because functions.js must stay small and esbuild's is a third larger. */
module.exports = (mode) => {
  const served = servedFrom(mode);
  return {
    mode,
    context: ROOT,
    name: "add-in",
    target: "web",
    // In a layer of its own functions.js shares no module with the pane: its modules are joined better, which takes 3 kB.
    entry: { functions: { import: "./functions/index.ts", layer: "cells" }, pane: "./src/pane/pane.ts" },
    experiments: { layers: true },
    // Scripts that are loaded later lie beside the page.
    output: {
      path: DIST,
      filename: "[name].js",
      chunkFilename: mode === "production" ? "[name].[contenthash:8].js" : "[name].js",
      publicPath: "",
      compareBeforeEmit: false,
    },
    devtool: mode === "production" ? false : "source-map",
    performance: { hints: false },
    resolve: { extensions: [".ts", ".tsx", ".js"], alias: REPLACED },
    // swc shrinks as far as the usual minimizer, in a fifth of its time.
    optimization: { minimizer: [new MinimizerPlugin({ minify: MinimizerPlugin.swcMinify })] },
    module: {
      rules: [
        {
          test: /\.tsx?$/,
          loader: "swc-loader",
          // Types are checked by `npm run types`.
          options: {
            jsc: {
              target: "es2022",
              parser: { syntax: "typescript", tsx: true },
              transform: { react: { runtime: "automatic", importSource: "preact" } },
            },
          },
        },
        { test: /\.ts$/, issuerLayer: "cells", enforce: "pre", loader: require.resolve("./withoutViews") },
        // Its colour profile is for archives, which these pages do not claim to be.
        { test: /pdfkit[\\/].*\.mjs$/, parser: { url: false } },
      ],
    },
    plugins: [
      { apply: functionsJson(served) },
      new DefinePlugin({ ENCLOSURE_NAMESPACE: JSON.stringify(mode === "production" ? "ENC" : "ENCDEV") }),
      { apply: notices },
      // The shared runtime is this one page: it holds the cell functions and the pane.
      new HtmlPlugin({ filename: "pane.html", template: "./src/pane/pane.html", chunks: ["functions", "pane"] }),
      new CopyPlugin({
        patterns: [
          { from: "src/pane/pane.css" },
          { from: "src/pane/paneFrame.css" },
          { from: "manifest/icons/*.png", to: "icons/[name][ext]" },
          {
            from: "manifest/manifest.xml",
            transform: (text) => manifestFor(mode, text.toString(), DEVELOPMENT_ADDRESS, served),
          },
          {
            from: "manifest/pages",
            transform: (content, file) =>
              file.endsWith(".html") ? content.toString().replaceAll("VERSION", VERSION) : content,
          },
        ],
      }),
      { apply: clearedChunks },
      { apply: recorded },
    ],
  };
};
