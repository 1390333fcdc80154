import { fork } from "node:child_process";
import { fileURLToPath } from "node:url";
import { parentPort, workerData } from "node:worker_threads";

// The thread between a test and the process that runs its commands.
const { program, answers, turn } = workerData;
const runner = fork(fileURLToPath(new URL("runner.mjs", import.meta.url)), [program]);
parentPort.on("message", (command) => runner.send(command));
runner.on("message", answer);
runner.on("exit", (code) => answer({ code, out: "", err: "the process of the commands ended" }));
process.on("exit", () => runner.kill());

function answer(ran) {
  answers.postMessage(ran);
  Atomics.store(turn, 0, 1);
  Atomics.notify(turn, 0);
}
