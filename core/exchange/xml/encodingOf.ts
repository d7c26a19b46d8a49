/** The encoding that an XML file names in its first line, or null. */
export function encodingOf(bytes: Uint8Array): string | null {
  const head = String.fromCharCode(...bytes.subarray(0, 200));
  return /^\s*<\?xml[^>]*?\bencoding\s*=\s*["']([\w.:-]{1,40})["']/.exec(head)?.[1] ?? null;
}
