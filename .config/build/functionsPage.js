/**
 * The page that Excel opens for help on a function: every function with its arguments, from functions.json.
 *
 * @param functions of functions.json
 * @param version of the add-in
 */
module.exports = (functions, version) => `<!doctype html>
<html lang="en">
  <head>
    <meta charset="utf-8" />
    <meta name="viewport" content="width=device-width, initial-scale=1" />
    <title>Enclosure Columns: functions</title>
    <link rel="stylesheet" href="pages.css" />
  </head>
  <body>
    <h1>Functions</h1>
    <p>Version ${version}. Arguments in square brackets may be left off. <a href="support.html">Help</a></p>
${functions.map(section).join("\n")}
  </body>
</html>
`;

function section({ id, name, description, parameters }) {
  const list = parameters.map((each) => (each.optional ? `[${each.name}]` : each.name)).join(", ");
  const items = parameters.map(
    (each) => `      <dt><code>${each.name}</code></dt>\n      <dd>${escaped(each.description)}</dd>`,
  );
  return [
    `    <h2 id="${id}"><code>ENC.${name}(${list})</code></h2>`,
    `    <p>${escaped(description)}</p>`,
    ...(items.length === 0 ? [] : ["    <dl>", ...items, "    </dl>"]),
  ].join("\n");
}

function escaped(text) {
  return text.replaceAll("&", "&amp;").replaceAll("<", "&lt;").replaceAll(">", "&gt;");
}
