import { notice } from "./notice";
import type { PageServer } from "./pageServer";
import { elementById, type StatusLine } from "./statusLine";

/** How often a page asks whether its program is there again, ms. */
const ASK_AGAIN = 2000;

/**
 * Says that the program has ended, and waits for it; the changes stay in the page meanwhile.
 *
 * @param keep hands over the changes when it is there again; tells whether it could
 * @returns to be called when the program does not answer
 */
export function waitForProgram(server: PageServer, status: StatusLine, keep: () => Promise<boolean>): () => void {
  let isWaiting = false;
  return () => {
    if (isWaiting) return;
    isWaiting = true;
    const file = elementById(document, "file").textContent;
    const close = notice(
      document,
      `The program behind this page has ended. Your changes are still here: leave this page open. Start the program again for ${file} and open the address that it prints: this page then goes on by itself.`,
      [],
    );
    const ask = (): void => {
      setTimeout(() => {
        server
          .alive()
          .then(async () => {
            close();
            isWaiting = false;
            if (await keep()) status.say("The program is there again, and has your changes");
          })
          .catch(ask);
      }, ASK_AGAIN);
    };
    ask();
  };
}
