import { createHash, randomBytes, timingSafeEqual } from 'node:crypto';
import type { IncomingMessage } from 'node:http';

/** A key that nobody can guess, made anew at each start. */
export function newToken(): string {
  return randomBytes(32).toString('base64url');
}

/**
 * Whether the request was sent to this very host by name and number. A page elsewhere whose name was pointed at
 * 127.0.0.1 (DNS rebinding) sends its own name.
 */
export function isForUs(request: IncomingMessage, port: number): boolean {
  return request.headers.host === `127.0.0.1:${port}`;
}

/** Whether the request comes from the app's own page, or from no page at all. */
export function isFromOurPage(request: IncomingMessage, port: number): boolean {
  const { origin, 'sec-fetch-site': site } = request.headers;
  if (origin !== undefined && origin !== `http://127.0.0.1:${port}`) return false;
  return site === undefined || site === 'same-origin' || site === 'none';
}

/** Whether the request carries the token, compared in constant time. */
export function hasToken(request: IncomingMessage, token: string): boolean {
  return timingSafeEqual(digest(request.headers.authorization ?? ''), digest(`Bearer ${token}`));
}

function digest(text: string): Buffer {
  return createHash('sha256').update(text).digest();
}
