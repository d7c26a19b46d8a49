/** Reads the entropy-coded bits of a JPEG file: T.81, annex F, with its stuffed bytes and markers. */
export class BitReader {
  readonly #bytes: Uint8Array;
  #at: number;
  #bits = 0;
  #count = 0;
  /** Bits beyond the data, which are made up. */
  #madeUp = 0;

  constructor(bytes: Uint8Array, at: number) {
    this.#bytes = bytes;
    this.#at = at;
  }

  /** The next 16 bits, not yet used up. */
  peek16(): number {
    while (this.#count <= 24) this.#fetch();
    return (this.#bits >>> (this.#count - 16)) & 0xffff;
  }

  skip(count: number): void {
    this.#count -= count;
  }

  /** Up to 16 bits. */
  take(count: number): number {
    if (count === 0) return 0;
    const value = this.peek16() >>> (16 - count);
    this.#count -= count;
    return value;
  }

  /** Whether bits were used that the data do not have. */
  get ranOut(): boolean {
    return this.#count < this.#madeUp;
  }

  /** Goes on after the next restart marker; false where there is none. */
  restart(): boolean {
    this.#bits = 0;
    this.#count = 0;
    this.#madeUp = 0;
    const bytes = this.#bytes;
    while (this.#at + 1 < bytes.length) {
      const next = bytes[this.#at + 1]!;
      if (bytes[this.#at] !== 0xff || next === 0xff || next === 0) this.#at += 1;
      else if (next >= 0xd0 && next <= 0xd7) {
        this.#at += 2;
        return true;
      } else return false;
    }
    return false;
  }

  #fetch(): void {
    const bytes = this.#bytes;
    let byte = 0;
    if (this.#at >= bytes.length) this.#madeUp += 8;
    else {
      byte = bytes[this.#at]!;
      if (byte !== 0xff) this.#at += 1;
      else if (bytes[this.#at + 1] === 0) this.#at += 2;
      else {
        byte = 0;
        this.#madeUp += 8;
      }
    }
    this.#bits = (this.#bits << 8) | byte;
    this.#count += 8;
  }
}

/** Writes entropy-coded bits into a buffer that grows. */
export class BitWriter {
  #bytes = new Uint8Array(1 << 20);
  #length = 0;
  #bits = 0;
  #count = 0;

  /** Bytes as they are, between whole bytes only. */
  raw(bytes: ArrayLike<number>): void {
    this.#room(bytes.length);
    this.#bytes.set(bytes, this.#length);
    this.#length += bytes.length;
  }

  /** The lowest `count` bits of `value`; up to 16. */
  bits(value: number, count: number): void {
    this.#bits = (this.#bits << count) | (value & ((1 << count) - 1));
    this.#count += count;
    while (this.#count >= 8) {
      this.#count -= 8;
      this.#byte((this.#bits >>> this.#count) & 0xff);
    }
  }

  /** Fills the last byte with ones. */
  flush(): void {
    if (this.#count > 0) this.bits(0xff, 8 - this.#count);
  }

  taken(): Uint8Array<ArrayBuffer> {
    const bytes = this.#bytes.slice(0, this.#length);
    this.#length = 0;
    this.#bits = 0;
    this.#count = 0;
    return bytes;
  }

  #byte(byte: number): void {
    this.#room(2);
    this.#bytes[this.#length++] = byte;
    if (byte === 0xff) this.#bytes[this.#length++] = 0;
  }

  #room(count: number): void {
    if (this.#length + count <= this.#bytes.length) return;
    const larger = new Uint8Array(2 * (this.#bytes.length + count));
    larger.set(this.#bytes.subarray(0, this.#length));
    this.#bytes = larger;
  }
}
