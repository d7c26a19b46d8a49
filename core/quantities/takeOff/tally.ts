import type { Message } from '../../words/message.ts';
import type { Measure } from '../measures.ts';
import type { Piece, Quantity } from '../types.ts';

/** Gathers pieces into quantities, in the order in which each was first met. */
export class Tally {
  readonly #measures = new Map<string, Measure>();
  readonly #pieces = new Map<string, Piece[]>();

  add(measure: Measure, thingIds: readonly string[], amount: number, text: Message): void {
    if (!(amount > 0)) return;
    let pieces = this.#pieces.get(measure.key);
    if (!pieces) {
      pieces = [];
      this.#measures.set(measure.key, measure);
      this.#pieces.set(measure.key, pieces);
    }
    pieces.push({ thingIds, amount, text });
  }

  quantities(): Quantity[] {
    return [...this.#measures.values()].map((measure) => quantityOf(measure, this.#pieces.get(measure.key)!));
  }
}

export function quantityOf(measure: Measure, pieces: readonly Piece[]): Quantity {
  return { ...measure, amount: pieces.reduce((sum, { amount }) => sum + amount, 0), pieces };
}
