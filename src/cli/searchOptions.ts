import { InputError, shown } from "../measure/errors";
import { warn } from "./print";
import type { BesideOptions } from "./planBeside";
import { textOf, type Given } from "./surveyOptions";

export function searchOptions(given: Given): BesideOptions {
  const seconds = textOf(given["seconds"]);
  const steps = textOf(given["steps"]);
  if (seconds !== undefined && !(Number(seconds) > 0 && Number.isFinite(Number(seconds))))
    throw new InputError("seconds", shown(seconds), "give the seconds to search for each stock, such as 10");
  if (steps !== undefined && !(Number(steps) >= 0 && Number.isInteger(Number(steps))))
    throw new InputError("steps", shown(steps), "give a whole number of steps for each stock, such as 2000");
  const limits = {
    ...(seconds === undefined ? {} : { milliseconds: Number(seconds) * 1000 }),
    ...(steps === undefined ? {} : { steps: Number(steps) }),
  };
  if (seconds === undefined && !process.stderr.isTTY) return limits;
  const last = new Map<string, number>();
  return {
    ...limits,
    onProgress: (stock, { sheets, gap, elapsedMs }) => {
      if (performance.now() - (last.get(stock) ?? Number.NEGATIVE_INFINITY) < PROGRESS_EVERY) return;
      last.set(stock, performance.now());
      const over = gap === 0 ? "cannot be fewer" : `at most ${(gap * 100).toFixed(1)} % over the least`;
      warn(`${stock}: ${sheets} ${sheets === 1 ? "sheet" : "sheets"}, ${over}, ${(elapsedMs / 1000).toFixed(1)} s`);
    },
  };
}

/** Least time between two lines of progress, ms. */
const PROGRESS_EVERY = 500;
