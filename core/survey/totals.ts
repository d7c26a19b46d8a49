import type { Network, Reach } from '../network/types.ts';
import type { CrossingFigures, LineShape } from '../shapes/types.ts';
import type { Paddock, Totals } from './types.ts';

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
  let deadFenceM = 0;
  for (const { line, lengthM } of lines.values()) if (!line.live) deadFenceM += lengthM;
  const cables = { trenchM: 0, pipeM: 0, liveCableM: 0, earthCableM: 0 };
  for (const { trenchM, pipeM, liveCableM, earthCableM } of crossings.values()) {
    cables.trenchM += trenchM;
    cables.pipeM += pipeM;
    cables.liveCableM += liveCableM;
    cables.earthCableM += earthCableM;
  }
  return {
    fenceM: liveFenceM + deadFenceM,
    liveFenceM,
    liveWireM,
    fedFenceM,
    paddockAreaM2: paddocks.reduce((sum, { areaM2 }) => sum + areaM2, 0),
    paddocks: paddocks.length,
    gateways: gateways.size,
    ...cables,
  };
}
