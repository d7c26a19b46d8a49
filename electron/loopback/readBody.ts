import type { IncomingMessage } from 'node:http';

/** The most that one message may hold: a big import, with room. */
export const mostBodyBytes = 64 * 1024 * 1024;

/**
 * The request's body as text, or null where it is longer than `mostBytes`. What comes after that is left to the server,
 * which throws it away, so that the sender can still read its answer.
 */
export async function readBody(request: IncomingMessage, mostBytes: number): Promise<string | null> {
  if (Number(request.headers['content-length'] ?? 0) > mostBytes) return null;
  const chunks: Buffer[] = [];
  let bytes = 0;
  for await (const chunk of request.iterator({ destroyOnReturn: false }) as AsyncIterable<Buffer>) {
    bytes += chunk.length;
    if (bytes > mostBytes) return null;
    chunks.push(chunk);
  }
  return Buffer.concat(chunks).toString('utf8');
}
