import { parseArgs, type ParseArgsConfig } from "node:util";
import { InputError, shown } from "../measure/errors";
import { didYouMean } from "../settings/names";
import { fail, failOutside } from "./fail";
import { HELP } from "./help";
import { print, visibleJson } from "./print";
import type { Given } from "./surveyOptions";
import { COMMANDS } from "./commands";

/** Starts the program: one command, from the arguments of the process. The built file calls it when it is run, not when it is loaded. */
export function start(): void {
  failOutside(process.argv.includes("--debug"));
  void answered(process.argv.slice(2)).then((code) => {
    process.exitCode = code;
  });
}

/**
 * Runs one command and prints its answer, or why there is none.
 *
 * @returns the exit code
 */
export async function answered(args: readonly string[]): Promise<number> {
  try {
    return await main(args);
  } catch (error) {
    const [name = "", ...rest] = args;
    return fail(error, args.includes("--debug"), { name, rest, json: rest.includes("--json") });
  }
}

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
