const path = require("path");
const { version } = require("../../package.json");

const ROOT = path.resolve(__dirname, "../..");

module.exports = {
  ROOT,
  /** Of the program: the folder that the add-in is served from is named after it. */
  VERSION: version,
  DIST: path.join(ROOT, "dist"),
  /** Modules that all three targets replace. */
  REPLACED: {
    // The build for browsers: a PDF has the same bytes everywhere.
    pdfkit: path.join(ROOT, "node_modules/pdfkit/js/pdfkit.browser.mjs"),
    "brotli/decompress.js": path.join(__dirname, "noWoff2.js"),
  },
};
