import { randomBytes, timingSafeEqual } from 'node:crypto';
import type { IncomingMessage } from 'node:http';

export interface RequestGuard {
  readonly origin: string;
  /** Good for one exchange. */
  readonly token: string;
  /** The cookie to set, for the right token; null for a wrong or used one. */
  exchange(token: string): string | null;
  hasCookie(request: IncomingMessage): boolean;
  /**
   * The Host header is this very address (a name that somebody points to 127.0.0.1 is not), and a page that sends an
   * Origin is ours; what is not a GET must send one.
   */
  comesFromHere(request: IncomingMessage): boolean;
}

/** Decides which requests belong to the one window. Token and cookie are 128 random bits each. */
export function createRequestGuard(port: number): RequestGuard {
  const host = `127.0.0.1:${port}`;
  const origin = `http://${host}`;
  const token = randomBytes(16).toString('hex');
  const secret = randomBytes(16).toString('hex');
  // Cookies do not know ports: the port in the name keeps two windows apart.
  const cookieName = `diewright-${port}`;
  let used = false;

  return {
    origin,
    token,
    exchange(given) {
      if (used || !same(given, token)) return null;
      used = true;
      return `${cookieName}=${secret}; HttpOnly; SameSite=Strict; Path=/`;
    },
    hasCookie(request) {
      const cookies = (request.headers.cookie ?? '').split(';').map((cookie) => cookie.trim());
      return cookies.some((cookie) => same(cookie, `${cookieName}=${secret}`));
    },
    comesFromHere(request) {
      // Two of them would be one too many: Node looks at the first, whoever stands between might at the last.
      const { host: hosts = [] } = request.headersDistinct;
      if (hosts.length !== 1 || hosts[0] !== host) return false;
      const sentOrigin = request.headers.origin;
      return sentOrigin === undefined ? request.method === 'GET' : sentOrigin === origin;
    },
  };
}

/** Compares in a time that does not tell where the first difference is. */
function same(a: string, b: string): boolean {
  const [bytesA, bytesB] = [Buffer.from(a), Buffer.from(b)];
  return bytesA.length === bytesB.length && timingSafeEqual(bytesA, bytesB);
}
