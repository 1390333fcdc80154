import type { Reply } from "./cells";
import type { SurveyAsk } from "./surveyAsks";

/** An ask with the number that its reply bears. */
export interface NumberedAsk {
  readonly number: number;
  readonly ask: SurveyAsk;
}

export interface NumberedReply {
  readonly number: number;
  readonly reply: Reply;
}

interface Thread {
  /** @returns undefined where the thread cannot answer */
  readonly ask: (ask: SurveyAsk) => Promise<Reply | undefined>;
}

/** Functions that plan or search: a table of figures does not wait for them. */
const LONG: ReadonlySet<SurveyAsk["name"]> = new Set(["sheets", "layout", "estimate", "sizes"]);

const threads = new Map<boolean, Thread>();

/**
 * Answers on a thread beside this one, so that the spreadsheet stays alive however long the survey is; on this one where
 * the host has no such threads. All plans come from one thread, which makes each once.
 */
export async function askBeside(ask: SurveyAsk): Promise<Reply> {
  const long = LONG.has(ask.name);
  if (typeof Worker !== "undefined" && !threads.has(long)) threads.set(long, startThread());
  const reply = await threads.get(long)?.ask(ask);
  if (reply !== undefined) return reply;
  const { replyInTurns } = await import(/* webpackChunkName: "surveyAsks" */ "./surveyAsks");
  return replyInTurns(ask);
}

function startThread(): Thread {
  const worker = new Worker("surveyWorker.js");
  const waiting = new Map<number, (reply: Reply | undefined) => void>();
  let works = true;
  let last = 0;
  worker.onmessage = ({ data: { number, reply } }: MessageEvent<NumberedReply>) => {
    waiting.get(number)?.(reply);
    waiting.delete(number);
  };
  worker.onerror = () => {
    works = false;
    for (const resolve of waiting.values()) resolve(undefined);
    waiting.clear();
  };
  return {
    ask: (ask) => {
      if (!works) return Promise.resolve(undefined);
      const number = ++last;
      return new Promise((resolve) => {
        waiting.set(number, resolve);
        worker.postMessage({ number, ask } satisfies NumberedAsk);
      });
    },
  };
}
