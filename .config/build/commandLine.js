const { chmodSync } = require("fs");
const path = require("path");
const CopyPlugin = require("copy-webpack-plugin");
const bundled = require("./bundled");
const { DIST } = require("./paths");

const PROGRAM = path.join(DIST, "enclosure-columns.js");

/** Fonts of src/paper/fonts.ts, for the command line and for the pane. */
const FONTS = [
  "@embedpdf/fonts-latin/fonts/NotoSans-Regular.ttf",
  "@embedpdf/fonts-latin/fonts/NotoSans-Bold.ttf",
  "@embedpdf/fonts-arabic/fonts/NotoNaskhArabic-Regular.ttf",
  "@embedpdf/fonts-hebrew/fonts/NotoSansHebrew-Regular.ttf",
  "@embedpdf/fonts-sc/fonts/NotoSansHans-Regular.otf",
  "@expo-google-fonts/gowun-dodum/400Regular/GowunDodum_400Regular.ttf",
];

/** The command line, a file for Node, and its planning threads, which start without the rest of it. */
module.exports = (mode) =>
  bundled({
    name: "command line",
    mode,
    notices: "NOTICES-command-line.txt",
    options: {
      entryPoints: { "enclosure-columns": "src/cli/main.ts", planThread: "src/cli/planThread.ts" },
      outdir: DIST,
      platform: "node",
      target: "node20",
      format: "cjs",
      // Packages' modules rather than their CommonJS files: what is not used is left out.
      mainFields: ["module", "main"],
      // PDFKit names a colour profile beside itself: for archives, which these pages do not claim to be.
      define: { "import.meta.url": '"file:///"' },
      banner: { js: "#!/usr/bin/env node" },
      footer: { js: "if (require.main === module) module.exports.start?.();" },
    },
    plugins: [
      new CopyPlugin({
        patterns: [
          ...FONTS.map((file) => ({ from: `node_modules/${file}`, to: "fonts/[name][ext]" })),
          { from: "node_modules/@embedpdf/fonts-latin/LICENSE", to: "fonts/LICENSE-Noto.txt", toType: "file" },
          {
            from: "node_modules/@expo-google-fonts/gowun-dodum/LICENSE_FONT",
            to: "fonts/LICENSE-GowunDodum.txt",
            toType: "file",
          },
        ],
      }),
      { apply: ({ hooks }) => hooks.afterEmit.tap("executable", () => chmodSync(PROGRAM, 0o755)) },
    ],
  });
