const bundled = require("./bundled");
const { recorded } = require("./deployed");
const { DIST } = require("./paths");

/** Scripts of the threads beside the add-in, bundled apart: what they share with it would make functions.js larger. */
module.exports = (mode) =>
  bundled({
    name: "threads",
    mode,
    notices: "NOTICES-threads.txt",
    options: {
      entryPoints: ["src/pane/planWorker.ts", "functions/surveyWorker.ts"],
      entryNames: "[name]",
      format: "iife",
      target: "es2022",
      outdir: DIST,
    },
    plugins: [{ apply: recorded }],
  });
