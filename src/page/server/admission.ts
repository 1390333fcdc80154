import { randomBytes, timingSafeEqual } from "node:crypto";
import type { IncomingMessage } from "node:http";

/** Who may ask the server: the browser that came with a code, and so has the cookie. */
export interface Admission {
  /** A path with a new code, which works once: `/enter/CODE`. An older one does not work any more. */
  readonly newPath: () => string;
  /** The cookie for whoever comes with the code; undefined when it is not the code, or has been used. */
  readonly enter: (path: string) => string | undefined;
  readonly isIn: (request: IncomingMessage) => boolean;
}

const SECRET_BYTES = 16;
const ENTRANCE = "/enter/";

/**
 * A code in an address may be read by others: it stands among the arguments of the browser's process, and in its history.
 * So it works once, and is exchanged for a cookie that no script and no other site can read or use.
 */
export function admission(): Admission {
  const secret = randomBytes(SECRET_BYTES).toString("hex");
  // Browsers send a cookie to every port of a machine, so each server has its own name.
  const name = `enclosure-${randomBytes(SECRET_BYTES).toString("hex")}`;
  let code: string | undefined;
  return {
    newPath: () => {
      code = randomBytes(SECRET_BYTES).toString("hex");
      return ENTRANCE + code;
    },
    enter: (path) => {
      if (code === undefined || !same(path, ENTRANCE + code)) return undefined;
      code = undefined;
      return `${name}=${secret}; HttpOnly; SameSite=Strict; Path=/`;
    },
    isIn: ({ headers }) => {
      const cookies = (headers.cookie ?? "").split(";").map((cookie) => cookie.trim());
      return cookies.some((cookie) => same(cookie, `${name}=${secret}`));
    },
  };
}

function same(a: string, b: string): boolean {
  const [one, other] = [Buffer.from(a), Buffer.from(b)];
  return one.length === other.length && timingSafeEqual(one, other);
}
