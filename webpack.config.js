const addIn = require("./.config/build/addIn");
const commandLine = require("./.config/build/commandLine");
const page = require("./.config/build/page");
const threads = require("./.config/build/threads");

module.exports = (_env, { mode = "production" }) => [addIn(mode), threads(mode), page(mode), commandLine(mode)];
