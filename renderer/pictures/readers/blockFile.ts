/** Reads a file in large blocks, so that many small looks into it cost little. */
export class BlockFile {
  readonly #file: Blob;
  #from = 0;
  #block: Uint8Array<ArrayBuffer> = new Uint8Array(0);

  constructor(file: Blob) {
    this.#file = file;
  }

  /** As many of `length` bytes from `at` on as there are. */
  async read(at: number, length: number): Promise<Uint8Array<ArrayBuffer>> {
    if (at < this.#from || at + length > this.#from + this.#block.length) {
      const end = at + Math.max(length, blockBytes);
      this.#block = new Uint8Array(await this.#file.slice(at, end).arrayBuffer());
      this.#from = at;
    }
    return this.#block.subarray(at - this.#from, at - this.#from + length);
  }
}

const blockBytes = 4 * 1024 * 1024;
