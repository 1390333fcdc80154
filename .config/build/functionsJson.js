const { readFileSync, readdirSync } = require("fs");
const path = require("path");
const { generateCustomFunctionsMetadata } = require("custom-functions-metadata");
const { Compilation, WebpackError, sources } = require("webpack");
const { ROOT } = require("./paths");

/** Emits functions.json from every file of functions/ that declares a cell function. */
module.exports = function functionsJson(compiler) {
  const folder = path.join(ROOT, "functions");
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
};
