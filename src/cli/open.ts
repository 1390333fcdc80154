import { spawn } from "node:child_process";
import { dirname, resolve } from "node:path";
import { InputError, shown } from "../measure/errors";
import { serveBook } from "../page/server/serveBook";
import { writeCsv } from "../workbook/writeCsv";
import { DEMO_SURVEY } from "./demoSurvey";
import { fail } from "./fail";
import { readRegularFile } from "../files/readRegularFile";
import type { Output } from "./output";
import { print } from "./print";

/**
 * `open`: the local workbook page, until the program is stopped.
 *
 * @param survey the file to open; left out, the demo survey
 * @param debug whether the details of a fault are printed
 * @throws InputError when the file cannot be opened, or the port is taken
 */
export async function openCommand(
  survey: string | undefined,
  port: string | undefined,
  debug: boolean,
): Promise<Output> {
  const folder = process.cwd();
  const { address, newAddress } = await serveBook({
    path: resolve(survey ?? "demo-survey.csv"),
    bytes: survey === undefined ? writeCsv(DEMO_SURVEY) : readRegularFile(survey, "survey"),
    folder,
    dist: dirname(resolve(process.argv[1]!)),
    port: portNumber(port),
    onFault: (error) => fail(error, debug),
  });
  openBrowser(address);
  // Each address lets one browser in; a second browser, or one that was closed, needs another.
  if (process.stdin.isTTY) process.stdin.on("data", () => print(`A new address: ${newAddress()}`));
  const text = `${survey ?? "The demo survey"} is open at ${address}
Only this machine can reach it, and the address works once: Enter gives another. A save is a new file beside the survey. Ctrl-C ends.`;
  return { text, json: { address } };
}

const LAST_PORT = 65_535;

function portNumber(port: string | undefined): number {
  if (port === undefined || port === "") return 0;
  const number = Number(port);
  if (Number.isInteger(number) && number >= 0 && number <= LAST_PORT) return number;
  throw new InputError("port", shown(port), `give a number up to ${LAST_PORT}, or none`);
}

const BROWSERS: Readonly<Record<string, readonly [command: string, ...args: string[]]>> = {
  darwin: ["open"],
  win32: ["cmd", "/c", "start", ""],
  linux: ["xdg-open"],
};

/** Opens the browser where there is a screen and one is known; where not, the printed address does. */
function openBrowser(address: string): void {
  const known = BROWSERS[process.platform];
  const screen = process.platform !== "linux" || process.env["DISPLAY"] || process.env["WAYLAND_DISPLAY"];
  if (known === undefined || !screen || process.env["CI"] || !process.stdout.isTTY) return;
  const [command, ...args] = known;
  spawn(command, [...args, address], { stdio: "ignore", detached: true })
    .on("error", () => undefined)
    .unref();
}
