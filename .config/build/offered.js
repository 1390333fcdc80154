const { Script, createContext } = require("vm");
const esbuild = require("esbuild");
const { ROOT } = require("./paths");

/** What the formula bar offers to choose from, read out of the sources: kinds, directions, measures of a part. */
const SOURCE = `
  export { KINDS } from "./src/enclosure/registry";
  export { AXES, PART_MEASURES } from "./src/item/answers";
`;

/** Which parameter takes which list. The text that is typed may be another: these are suggestions. */
const LIST_OF = { enclosure: "ENCLOSURE", direction: "DIRECTION", measure: "MEASURE" };

/** Functions whose parameter of that name is another thing. */
const OTHERS = { direction: ["BASE.SIZE", "COVER.BLANK"], measure: ["MEASURE"] };

/**
 * Adds to functions.json the lists of values that newer versions of Excel offer while a formula is typed. Older ones pass
 * them over. The type stays "any", so that what reaches a function is the same everywhere.
 */
module.exports = (metadata) => {
  const { KINDS, AXES, PART_MEASURES } = fromSources();
  const list = (id, values) => ({
    id,
    type: "string",
    values: values.map(([name, tooltip]) => ({ name, stringValue: name, ...(tooltip ? { tooltip } : {}) })),
  });
  const functions = metadata.functions.map((entry) => ({
    ...entry,
    parameters: entry.parameters.map((parameter) => {
      const customEnumId = OTHERS[parameter.name]?.includes(entry.id) ? undefined : LIST_OF[parameter.name];
      return customEnumId === undefined ? parameter : { ...parameter, customEnumId };
    }),
  }));
  const enums = [
    list(
      "ENCLOSURE",
      KINDS.map(({ name, otherNames }) => [name, otherNames.length === 0 ? "" : `also ${otherNames.join(", ")}`]),
    ),
    list(
      "DIRECTION",
      [...Object.keys(AXES), "all"].map((name) => [name]),
    ),
    list(
      "MEASURE",
      PART_MEASURES.map((name) => [name]),
    ),
  ];
  return { ...metadata, functions, enums };
};

function fromSources() {
  const { outputFiles } = esbuild.buildSync({
    stdin: { contents: SOURCE, resolveDir: ROOT, loader: "ts" },
    bundle: true,
    format: "cjs",
    platform: "node",
    write: false,
  });
  const module = { exports: {} };
  new Script(outputFiles[0].text).runInContext(createContext({ module, exports: module.exports, require }));
  return module.exports;
}
