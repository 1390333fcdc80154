import { parentPort, workerData } from "node:worker_threads";
import { planStock } from "../estimate/stockPlans";
import { InputError } from "../measure/errors";
import type { Ask, Message, Shared } from "./planBeside";

// A planning thread of the command line, a program of its own: it starts with what planning needs, and answers until it is ended.
const { stop } = workerData as Shared;
parentPort!.on("message", ({ place, job, seed, budget }: Ask) => {
  const tell = (message: Message) => parentPort!.postMessage(message);
  try {
    const plan = planStock(job, {
      seed,
      budget,
      onProgress: (stock, progress) => tell({ stock, progress }),
      shouldStop: () => Atomics.load(stop, 0) === 1,
    });
    tell({ place, plan });
  } catch (error) {
    if (!(error instanceof InputError)) throw error;
    const { argument, got, expected, cure } = error;
    tell({ place, refused: { argument, got, expected, cure } });
  }
});
