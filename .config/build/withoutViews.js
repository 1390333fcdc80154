const ts = require("typescript");

/** What a kind says for drawings and bench pages alone (`ShownKind`), which no cell asks for: 2 kB a kind. */
const SHOWN = ["order", "opened", "apart"];
const ASKED = new RegExp(`\\.(${SHOWN.join("|")})\\(`);

/**
 * A loader for functions.js: kinds without their drawings and steps of assembly, so that what these import is left out
 * as well. A module that asks for one of them may not be in functions.js, and fails the build.
 */
module.exports = function withoutViews(source) {
  if (!this.resourcePath.replaceAll("\\", "/").includes("/enclosure/kinds/")) {
    if (ASKED.test(source)) throw new Error(`functions.js has no ${SHOWN.join(", ")} of a kind: see withoutViews.js`);
    return source;
  }
  const file = ts.createSourceFile(this.resourcePath, source, ts.ScriptTarget.ES2022, true);
  return kindsOf(file)
    .flatMap(({ properties }) => properties)
    .filter(({ name }) => SHOWN.includes(name?.getText(file)))
    .reduceRight((text, property) => text.slice(0, property.pos) + text.slice(afterComma(text, property.end)), source);
};

/** The objects that a module declares as a `Kind`. */
function kindsOf(file) {
  return file.statements
    .filter(ts.isVariableStatement)
    .flatMap(({ declarationList }) => declarationList.declarations)
    .filter(({ type }) => type?.getText(file) === "Kind")
    .map(({ initializer }) => initializer);
}

function afterComma(text, end) {
  return text[end] === "," ? end + 1 : end;
}
