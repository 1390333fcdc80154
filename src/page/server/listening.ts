import type { Server } from "node:http";
import { InputError } from "../../measure/errors";

function listening(server: Server, port: number): Promise<void> {
  return new Promise((resolve, reject) => {
    server.once("error", (error: NodeJS.ErrnoException) => {
      const taken = error.code === "EADDRINUSE" || error.code === "EACCES";
      reject(taken ? new InputError("PORT", String(port), "needs a free port", "give another, or none") : error);
    });
    server.listen(port, "127.0.0.1", resolve);
  });
}

/**
 * Listens on this machine alone. Where any port will do, an earlier program's: a page that it left open finds this one there.
 *
 * @throws InputError when the port is taken
 */
export async function listeningAgain(server: Server, port: number, earlier: readonly number[]): Promise<void> {
  for (const each of port === 0 ? earlier : []) {
    try {
      return await listening(server, each);
    } catch {
      // Taken meanwhile.
    }
  }
  await listening(server, port);
}

export function closed(server: Server): Promise<void> {
  return new Promise((resolve) => {
    server.close(() => resolve());
    server.closeAllConnections();
  });
}
