import type { IncomingMessage, ServerResponse } from "node:http";
import { InputError } from "../../measure/errors";
import { HEADERS } from "./headers";
import { MalformedEdits } from "./readEdits";

/** Statuses of HTTP. */
export const OK = 200;
export const SEE_OTHER = 303;
export const MALFORMED = 400;
const REFUSED = 422;
export const FORBIDDEN = 403;
export const MISSING = 404;
export const FAILED = 500;

/** What a request is answered with: what was asked for, or why it is refused. @throws what is a fault of the program */
export async function outcome(work: () => Promise<unknown>): Promise<readonly [status: number, body: unknown]> {
  try {
    return [OK, await work()];
  } catch (error) {
    if (error instanceof InputError) {
      const { message, argument, got, expected, cure } = error;
      return [error instanceof MalformedEdits ? MALFORMED : REFUSED, { message, argument, got, expected, cure }];
    }
    throw error;
  }
}

/** Answers a request, once. */
export function send(response: ServerResponse, status: number, type: string, body: string | Uint8Array): void {
  if (response.headersSent) return void response.end();
  response.writeHead(status, { ...HEADERS, "Content-Type": type });
  response.end(body);
}

/** @throws InputError when more is sent than is taken */
export async function bodyOf(request: IncomingMessage, largest: number): Promise<Buffer> {
  const chunks: Buffer[] = [];
  let size = 0;
  for await (const chunk of request as AsyncIterable<Buffer>) {
    size += chunk.length;
    if (size > largest)
      throw new InputError("file", `more than ${largest / 1_048_576} MB`, "takes smaller ones", "use the command line");
    chunks.push(chunk);
  }
  return Buffer.concat(chunks);
}
