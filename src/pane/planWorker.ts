import { planStock } from "../estimate/stockPlans";
import { InputError } from "../measure/errors";
import type { PlanAsk, PlanMessage } from "./searchPlans";

/** Plans one stock after the other, as it is asked. */
addEventListener("message", ({ data: { job, seed, milliseconds } }: MessageEvent<PlanAsk>) => {
  const tell = (message: PlanMessage) => postMessage(message);
  try {
    const plan = planStock(job, {
      seed,
      ...(milliseconds === undefined ? {} : { budget: { milliseconds } }),
      onProgress: (_, progress) => tell({ progress }),
    });
    tell({ plan });
  } catch (error) {
    if (!(error instanceof InputError)) throw error;
    tell({ refused: error.message });
  }
});
