const addIn = require("./.config/build/addIn");
const commandLine = require("./.config/build/commandLine");
const { deployed } = require("./.config/build/deployed");
const page = require("./.config/build/page");
const threads = require("./.config/build/threads");

module.exports = (_env, { mode = "production" }) => [
  addIn(mode),
  threads(mode),
  page(mode),
  commandLine(mode),
  ...(mode === "production" ? [deployed()] : []),
];
