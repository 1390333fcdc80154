import type { NumberedAsk, NumberedReply } from "./askBeside";
import { replyTo } from "./surveyAsks";

/** Answers the functions of a whole survey, one after the other, as they are asked. */
addEventListener("message", ({ data: { number, ask } }: MessageEvent<NumberedAsk>) => {
  postMessage({ number, reply: replyTo(ask) } satisfies NumberedReply);
});
