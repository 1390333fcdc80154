import { pathToFileURL } from "node:url";

// Runs the commands of a suite one after another, each in its folder, and sends back what each printed.
const [, , program] = process.argv;
const { answered } = (await import(pathToFileURL(program).href)).default;

process.on("disconnect", () => process.exit());
process.on("message", (command) => void run(command));

async function run({ folder, args }) {
  const printed = { stdout: "", stderr: "" };
  for (const stream of ["stdout", "stderr"])
    process[stream].write = (piece) => {
      printed[stream] += piece;
      return true;
    };
  process.chdir(folder);
  process.argv = [process.execPath, program, ...args];
  const code = await answered(args);
  process.send({ code, out: printed.stdout, err: printed.stderr });
}
