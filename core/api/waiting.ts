/** Answers that are waited for from somebody who may be lost before: then whoever waits is told, and waits no longer. */
export class Waiting {
  readonly #rejects = new Set<(error: Error) => void>();

  /** The answer, or the error that all was lost with. */
  until<T>(answer: Promise<T>): Promise<T> {
    return new Promise<T>((resolve, reject) => {
      this.#rejects.add(reject);
      answer.then(resolve, reject).finally(() => this.#rejects.delete(reject));
    });
  }

  /** No answer comes any more to what is waited for now. */
  lose(error: Error): void {
    for (const reject of this.#rejects) reject(error);
    this.#rejects.clear();
  }
}
