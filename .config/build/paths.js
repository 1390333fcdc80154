const path = require("path");

const ROOT = path.resolve(__dirname, "../..");

module.exports = {
  ROOT,
  DIST: path.join(ROOT, "dist"),
  /** Modules that all three targets replace. */
  REPLACED: {
    // The build for browsers: a PDF has the same bytes everywhere.
    pdfkit: path.join(ROOT, "node_modules/pdfkit/js/pdfkit.browser.mjs"),
    "brotli/decompress.js": path.join(__dirname, "noWoff2.js"),
  },
};
