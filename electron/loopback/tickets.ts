import { createHash, randomBytes, timingSafeEqual } from 'node:crypto';

/** So long a ticket is good: time for a browser to start, or for a person to copy an address. */
export const ticketLifeMs = 2 * 60_000;

/** So many wrong tickets in one minute, and nobody is let in before it is over. */
const mostWrong = { count: 10, withinMs: 60_000 };

/** So many spent tickets are remembered, to tell a second use from a ticket that never was. */
const mostRemembered = 200;

export type TicketCheck = 'good' | 'used' | 'expired' | 'unknown' | 'too-many';

interface Issued {
  readonly digest: Buffer;
  readonly goodUntilMs: number;
  used: boolean;
}

/**
 * One-use keys to the app. An address can be read by others (a browser's arguments by every account of the machine), so it
 * carries no lasting key: only a ticket, which the page exchanges for the token at once and which is worth nothing then.
 */
export class Tickets {
  readonly #nowMs: () => number;
  #issued: Issued[] = [];
  #wrongAtMs: number[] = [];

  constructor(nowMs: () => number = () => performance.now()) {
    this.#nowMs = nowMs;
  }

  issue(): string {
    const ticket = randomBytes(32).toString('base64url');
    const goodUntilMs = this.#nowMs() + ticketLifeMs;
    this.#issued = [...this.#issued, { digest: digestOf(ticket), goodUntilMs, used: false }].slice(-mostRemembered);
    return ticket;
  }

  /** Whether the ticket lets in, compared in constant time with every one there is; if so, never again. */
  redeem(ticket: string): TicketCheck {
    const now = this.#nowMs();
    this.#wrongAtMs = this.#wrongAtMs.filter((atMs) => now - atMs < mostWrong.withinMs);
    if (this.#wrongAtMs.length >= mostWrong.count) return 'too-many';
    const digest = digestOf(ticket);
    const [issued] = this.#issued.filter((known) => timingSafeEqual(known.digest, digest));
    if (issued && !issued.used && now < issued.goodUntilMs) {
      issued.used = true;
      return 'good';
    }
    this.#wrongAtMs.push(now);
    if (!issued) return 'unknown';
    return issued.used ? 'used' : 'expired';
  }
}

function digestOf(text: string): Buffer {
  return createHash('sha256').update(text).digest();
}
