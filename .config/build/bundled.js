const { Buffer } = require("buffer");
const path = require("path");
const esbuild = require("esbuild");
const { Compilation, WebpackError, sources } = require("webpack");
const { noticesOf } = require("./notices");
const { DIST, REPLACED, ROOT } = require("./paths");

/**
 * A target of the one webpack build whose files esbuild bundles, because webpack takes twenty times as long for them.
 * webpack still writes the files, reports the errors and watches the sources.
 *
 * @param name names the target in error messages
 * @param mode "production" or "development"
 * @param options esbuild's own
 * @param notices the file that takes the licences of the bundled packages
 * @param finish gives the content of a file to write, from the file and esbuild's list of outputs
 */
module.exports = ({ name, mode, options, notices, finish = ({ contents }) => contents, plugins = [] }) => ({
  mode,
  context: ROOT,
  name,
  entry: {},
  output: { path: DIST, compareBeforeEmit: false },
  // esbuild has shrunk it already.
  optimization: { minimize: false },
  performance: { hints: false },
  plugins: [
    { apply: (compiler) => emitBundle(compiler, name, optionsFor(mode, options), finish, notices) },
    ...plugins,
  ],
});

const optionsFor = (mode, options) => ({
  absWorkingDir: ROOT,
  alias: REPLACED,
  bundle: true,
  minify: mode === "production",
  sourcemap: mode !== "production",
  write: false,
  metafile: true,
  logLevel: "silent",
  ...options,
});

function emitBundle(compiler, name, options, finish, notices) {
  compiler.hooks.thisCompilation.tap(name, (compilation) => {
    for (const folder of ["src", "functions"]) compilation.contextDependencies.add(path.join(ROOT, folder));
    const stage = Compilation.PROCESS_ASSETS_STAGE_ADDITIONAL;
    compilation.hooks.processAssets.tapPromise({ name, stage }, async () => {
      const { outputFiles, metafile, errors } = await esbuild
        .build(options)
        .catch(({ errors }) => ({ outputFiles: [], errors }));
      compilation.errors.push(
        ...errors.map(({ text, location }) => new WebpackError(`${name}: ${text} ${location?.file}:${location?.line}`)),
      );
      if (metafile) emitNotices(compilation, name, Object.keys(metafile.inputs), notices);
      for (const file of outputFiles)
        compilation.emitAsset(
          path.relative(DIST, file.path),
          new sources.RawSource(Buffer.from(finish(file, metafile))),
        );
    });
  });
}

/** A licence that may not be shipped fails the build. */
function emitNotices(compilation, name, files, notices) {
  try {
    compilation.emitAsset(notices, new sources.RawSource(noticesOf(files)));
  } catch (error) {
    compilation.errors.push(new WebpackError(`${name}: ${error.message}`));
  }
}
