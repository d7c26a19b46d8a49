/** A new id for a thing of this kind: the kind and 48 random bits. */
export function newId(kind: string): string {
  const bits = crypto.getRandomValues(new Uint8Array(6));
  return `${kind}-${Array.from(bits, (byte) => byte.toString(16).padStart(2, '0')).join('')}`;
}
