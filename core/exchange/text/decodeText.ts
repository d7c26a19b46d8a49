/** Typed here so that `core` need not see the types of Node and the DOM; both have it (WHATWG Encoding). */
interface Decoder {
  decode(bytes: Uint8Array): string;
}
const { TextDecoder } = globalThis as unknown as {
  readonly TextDecoder: new (label: string, options?: { readonly fatal?: boolean }) => Decoder;
};

export interface DecodedText {
  readonly text: string;
  /** Letters that are not UTF-8 were taken for Windows-1252: accented letters may come out wrong. */
  readonly guessed: boolean;
}

/**
 * The text in some bytes: by its byte order mark, else by `label` (a name of an encoding, as a file gives it for
 * itself), else UTF-8.
 */
export function decodeText(bytes: Uint8Array, label: string | null = null): DecodedText {
  const marked = byOrderMark(bytes);
  if (marked) return { text: marked.decode(bytes), guessed: false };
  const named = label === null ? null : decoderOf(label);
  if (named) return { text: named.decode(bytes), guessed: false };
  try {
    return { text: new TextDecoder('utf-8', { fatal: true }).decode(bytes), guessed: false };
  } catch {
    return { text: new TextDecoder('windows-1252').decode(bytes), guessed: true };
  }
}

function byOrderMark(bytes: Uint8Array): Decoder | null {
  if (bytes[0] === 0xff && bytes[1] === 0xfe) return new TextDecoder('utf-16le');
  if (bytes[0] === 0xfe && bytes[1] === 0xff) return new TextDecoder('utf-16be');
  if (bytes[0] === 0xef && bytes[1] === 0xbb && bytes[2] === 0xbf) return new TextDecoder('utf-8');
  return null;
}

function decoderOf(label: string): Decoder | null {
  try {
    return new TextDecoder(label);
  } catch {
    return null;
  }
}
