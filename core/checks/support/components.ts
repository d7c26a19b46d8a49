import type { Network } from '../../network/types.ts';

/** A number for each node; nodes with the same number hang together. */
export interface Components {
  readonly allClosed: Int32Array;
  readonly asTheyStand: Int32Array;
}

export function componentsOf(network: Network): Components {
  return { allClosed: numbered(network, true), asTheyStand: numbered(network, false) };
}

function numbered({ nodes, edges, edgesAt }: Network, throughOpen: boolean): Int32Array {
  const numbers = new Int32Array(nodes.length).fill(-1);
  for (let first = 0, count = 0; first < nodes.length; first++) {
    if (numbers[first] !== -1) continue;
    const waiting = [first];
    numbers[first] = count;
    for (let node = waiting.pop(); node !== undefined; node = waiting.pop()) {
      for (const index of edgesAt[node]!) {
        const edge = edges[index]!;
        if (!throughOpen && edge.kind === 'switch' && edge.normally === 'open') continue;
        const other = edge.from === node ? edge.to : edge.from;
        if (numbers[other] !== -1) continue;
        numbers[other] = count;
        waiting.push(other);
      }
    }
    count++;
  }
  return numbers;
}
