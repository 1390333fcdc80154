const { readFileSync, readdirSync } = require("fs");
const path = require("path");
const { generateCustomFunctionsMetadata } = require("custom-functions-metadata");
const { Compilation, WebpackError, sources } = require("webpack");
const functionsPage = require("./functionsPage");
const offered = require("./offered");
const { ROOT, VERSION } = require("./paths");

/**
 * Emits functions.json from every file of functions/ that declares a cell function, and the page of help on them.
 *
 * @param served the address that the add-in's files are served from
 */
module.exports = (served) => (compiler) => {
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
      const generated = offered({ allowErrorForDataTypeAny: true, ...JSON.parse(metadataJson) });
      const functions = generated.functions.map((entry) => ({
        ...entry,
        helpUrl: `${served}/functions.html#${entry.id}`,
      }));
      const text = JSON.stringify({ ...generated, functions }, null, 2);
      compilation.emitAsset("functions.json", new sources.RawSource(text));
      compilation.emitAsset("functions.html", new sources.RawSource(functionsPage(functions, VERSION)));
    });
  });
};
