import type { Change } from '../model/difference.ts';
import { type Message, message } from '../words/message.ts';

/** The most that one edit may bring to the host: how many changes, and how many bytes of JSON. */
export const editLimits = { changes: 200_000, bytes: 64 * 1024 * 1024 };

/**
 * The most that one thing may bring of what this version does not know: bytes of JSON, and objects and lists one in another.
 * Far more than a few new fields need, and far less than fills a file or a stack.
 */
export const unknownLimits = { bytes: 256 * 1024, depth: 50 };

/** What goes with the changes in a message. */
const envelopeBytes = 4096;

/** Why changes are too much for one edit, as the middle of a sentence; null: they are not. */
export function whyNotOneEdit(changes: readonly Change[]): Message | null {
  if (changes.length > editLimits.changes) {
    return message('exchange.limits.changes', { changes: changes.length, most: editLimits.changes });
  }
  let bytes = envelopeBytes;
  for (const change of changes) bytes += jsonBytes(change) + 1;
  if (bytes <= editLimits.bytes) return null;
  const [megabytes, most] = [inMegabytes(bytes), inMegabytes(editLimits.bytes)];
  return message('exchange.limits.megabytes', { megabytes, most });
}

/** Bytes of a value as JSON in UTF-8. */
function jsonBytes(value: unknown): number {
  const text = JSON.stringify(value);
  let bytes = text.length;
  // A letter beyond ASCII takes two bytes or three; half a pair of letters takes two of its four.
  for (const [letters] of text.matchAll(/[^\0-\x7f]+/g)) {
    for (let i = 0; i < letters.length; i++) {
      const code = letters.charCodeAt(i);
      bytes += code < 0x800 || (code >= 0xd800 && code < 0xe000) ? 1 : 2;
    }
  }
  return bytes;
}

function inMegabytes(bytes: number): number {
  return Math.ceil(bytes / 1024 / 1024);
}
