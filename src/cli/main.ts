import { parseArgs, type ParseArgsConfig } from "node:util";
import { isMainThread } from "node:worker_threads";
import { InputError, shown } from "../measure/errors";
import { didYouMean } from "../settings/names";
import { fail, failOutside } from "./fail";
import { HELP } from "./help";
import { print, visibleJson } from "./print";
import { servePlans } from "./planBeside";
import type { Given } from "./surveyOptions";
import { COMMANDS } from "./commands";

if (isMainThread) {
  const debug = process.argv.includes("--debug");
  failOutside(debug);
  void main(process.argv.slice(2))
    .catch((error: unknown) => {
      const [, , name = "", ...rest] = process.argv;
      return fail(error, debug, { name, rest, json: rest.includes("--json") });
    })
    .then((code) => {
      process.exitCode = code;
    });
} else servePlans();

async function main([name = "", ...rest]: readonly string[]): Promise<number> {
  if (name === "" || name === "--help" || name === "-h" || name === "help") {
    print(ownOf(HELP, rest[0] ?? "") ?? HELP[""]!);
    return 0;
  }
  const command = ownOf(COMMANDS, name);
  if (command === undefined)
    throw new InputError(
      "command",
      shown(name),
      `give ${Object.keys(COMMANDS).join(", ")}`,
      didYouMean(name, Object.keys(COMMANDS)),
    );
  const { values, positionals } = parseCommand(rest, command.options);
  if (values["help"] === true) {
    print(HELP[name]!);
    return 0;
  }
  const { text: answer, json } = await command.run(values, positionals);
  print(values["json"] === true ? visibleJson(json) : answer);
  return 0;
}

/** Of a typed name: `constructor` and its like are on every object, and are no command. */
function ownOf<Value>(list: Readonly<Record<string, Value>>, name: string): Value | undefined {
  return Object.hasOwn(list, name) ? list[name] : undefined;
}

function parseCommand(args: readonly string[], options: ParseArgsConfig["options"]) {
  try {
    const { values, positionals } = parseArgs({ args: [...args], options: options ?? {}, allowPositionals: true });
    return { values: values as Given, positionals };
  } catch (error) {
    const message =
      error instanceof Error ? error.message.replace(/\. To specify.*$/s, "") : "options that cannot be read";
    throw new InputError("options", message, "see --help");
  }
}
