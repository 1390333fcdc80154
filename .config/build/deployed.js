const { existsSync, readdirSync, readFileSync, rmSync } = require("fs");
const path = require("path");
const { Compilation, sources } = require("webpack");
const { DIST, ROOT, VERSION } = require("./paths");

/** What an institution puts on its server, and nothing else. */
const DEPLOYED = path.join(DIST, "addin");

/** Targets whose files it takes. */
const TARGETS = ["add-in", "threads"];
/** This one writes the fonts. */
const COMMAND_LINE = "command line";

/** What each of the targets wrote, by its name. */
const written = new Map();

/** For a target whose files are deployed: says what it wrote. */
function recorded({ hooks, options: { name } }) {
  hooks.afterEmit.tap("recorded", (compilation) => {
    written.set(
      name,
      compilation.getAssets().map((asset) => asset.name),
    );
  });
}

/** Scripts of an earlier build, whose names hold another mark of their content. */
function clearedChunks({ hooks }) {
  hooks.beforeRun.tap("cleared chunks", () => {
    for (const name of existsSync(DIST) ? readdirSync(DIST) : [])
      if (/^[\w-]+\.[0-9a-f]{8}\.js$/.test(name)) rmSync(path.join(DIST, name));
  });
}

/** Copies what was built into dist/addin: the manifest, and a folder of this version with all that it leads to. */
function deployed() {
  return {
    mode: "production",
    context: ROOT,
    name: "deployed",
    dependencies: [...TARGETS, COMMAND_LINE],
    entry: {},
    output: { path: DEPLOYED, compareBeforeEmit: false },
    // They are shrunk already.
    optimization: { minimize: false },
    performance: { hints: false },
    plugins: [{ apply: copied }],
  };
}

function copied({ hooks }) {
  hooks.thisCompilation.tap("deployed", (compilation) => {
    const stage = Compilation.PROCESS_ASSETS_STAGE_ADDITIONAL;
    compilation.hooks.processAssets.tap({ name: "deployed", stage }, () => {
      rmSync(DEPLOYED, { recursive: true, force: true });
      const put = (from, to) => compilation.emitAsset(to, new sources.RawSource(readFileSync(from)));
      for (const name of TARGETS.flatMap((target) => written.get(target) ?? []))
        put(path.join(DIST, name), name === "manifest.xml" ? name : `${VERSION}/${name}`);
      for (const name of readdirSync(path.join(DIST, "fonts")))
        put(path.join(DIST, "fonts", name), `${VERSION}/fonts/${name}`);
      for (const name of readdirSync(path.join(ROOT, "manifest")))
        if (name.endsWith(".md")) put(path.join(ROOT, "manifest", name), name);
      put(path.join(ROOT, "LICENSE"), "LICENSE");
    });
  });
}

module.exports = { clearedChunks, deployed, recorded };
