import type { Xy } from './types.ts';

/** Numbers places 0, 1, 2, ... as they come; the same coordinates get the same number. */
export interface PlaceNumbers {
  readonly numberOf: (place: Xy) => number;
  /** By number. */
  readonly places: readonly Xy[];
}

/** For at most `most` places: an open hash table of their coordinates, which leaves nothing for the collector. */
export function createPlaceNumbers(most: number): PlaceNumbers {
  const places: Xy[] = [];
  const mask = 2 ** Math.ceil(Math.log2(2 * most + 2)) - 1;
  const table = new Int32Array(mask + 1).fill(-1);
  const bits = new Float64Array(2);
  const words = new Uint32Array(bits.buffer);

  function slotOf([x, y]: Xy): number {
    // Adding 0 makes -0 and 0 one.
    bits[0] = x + 0;
    bits[1] = y + 0;
    let hash = Math.imul(words[0]! ^ Math.imul(words[1]!, 0x85ebca6b), 0xc2b2ae35);
    hash = Math.imul(hash ^ (hash >>> 15) ^ words[2]! ^ Math.imul(words[3]!, 0x27d4eb2f), 0x9e3779b1);
    let slot = (hash ^ (hash >>> 13)) & mask;
    while (table[slot] !== -1) {
      const known = places[table[slot]!]!;
      if (known[0] === x && known[1] === y) break;
      slot = (slot + 1) & mask;
    }
    return slot;
  }

  return {
    places,
    numberOf(place) {
      const slot = slotOf(place);
      if (table[slot] === -1) table[slot] = places.push(place) - 1;
      return table[slot]!;
    },
  };
}
