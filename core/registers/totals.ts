import type { Network, Reach } from '../network/types.ts';
import type { CrossingFigures, LineShape, Paddock, Totals } from './types.ts';

interface Counted {
  readonly lines: ReadonlyMap<string, LineShape>;
  readonly gateways: ReadonlyMap<string, unknown>;
  readonly crossings: ReadonlyMap<string, CrossingFigures>;
  readonly paddocks: readonly Paddock[];
  readonly network: Network;
  readonly reach: Reach;
}

/** Fence lengths leave the openings out: they are what is fenced. Dead lines count whole, as nothing cuts them. */
export function totalsOf({ lines, gateways, crossings, paddocks, network, reach }: Counted): Totals {
  let liveFenceM = 0;
  let liveWireM = 0;
  let fedFenceM = 0;
  for (let index = 0; index < network.edges.length; index++) {
    const edge = network.edges[index]!;
    if (edge.kind !== 'run') continue;
    liveFenceM += edge.lengthM;
    liveWireM += edge.lengthM * edge.liveWires;
    if (reach.edgeFed[index]) fedFenceM += edge.lengthM;
  }
  const deadLines = [...lines.values()].filter(({ line }) => !line.live);
  const figures = [...crossings.values()];
  return {
    fenceM: liveFenceM + sum(deadLines.map(({ lengthM }) => lengthM)),
    liveFenceM,
    liveWireM,
    fedFenceM,
    paddockAreaM2: sum(paddocks.map(({ areaM2 }) => areaM2)),
    paddocks: paddocks.length,
    gateways: gateways.size,
    trenchM: sum(figures.map(({ trenchM }) => trenchM)),
    pipeM: sum(figures.map(({ pipeM }) => pipeM)),
    liveCableM: sum(figures.map(({ liveCableM }) => liveCableM)),
    earthCableM: sum(figures.map(({ earthCableM }) => earthCableM)),
  };
}

function sum(figures: readonly number[]): number {
  return figures.reduce((total, figure) => total + figure, 0);
}
