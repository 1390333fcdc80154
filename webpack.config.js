const addIn = require("./.config/build/addIn");
const commandLine = require("./.config/build/commandLine");
const page = require("./.config/build/page");

module.exports = (_env, { mode = "production" }) => [addIn(mode), page(mode), commandLine(mode)];
