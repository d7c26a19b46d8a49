import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { nearestOnSegment } from '../../../core/geometry/polyline.ts';
import type { Project } from '../../../core/model/project.ts';
import { buildNetwork } from '../../../core/network/buildNetwork.ts';
import { feedOf, passesNormally } from '../../../core/network/feed.ts';
import { reachOf } from '../../../core/network/reach.ts';
import { shortestWays, wayTo } from '../../../core/network/shortestWays.ts';
import type { Network } from '../../../core/network/types.ts';
import { gatewaySpan } from '../../../core/shapes/gatewaySpan.ts';
import { measuredPath } from '../../../core/shapes/measuredPath.ts';
import { workingPlane } from '../../../core/shapes/workingPlane.ts';
import { origin } from '../../support/drawings.ts';
import { randomDrawing } from '../../support/randomDrawing.ts';

const runs = { seed: 20, numRuns: 600 };
const plane = workingPlane({ origin });

const geometriesOf = (project: Project) =>
  [...project.fenceLine.values()].flatMap((line) => {
    const geometry = measuredPath(line.path, plane);
    return geometry && geometry.lengthM > 0.001 ? [{ line, geometry }] : [];
  });

/** Length covered by some stretches of a line, overlaps once. */
function coveredM(stretches: readonly (readonly [number, number])[]): number {
  let covered = 0;
  let reached = Number.NEGATIVE_INFINITY;
  for (const [from, to] of [...stretches].sort((a, b) => a[0] - b[0])) {
    covered += Math.max(0, to - Math.max(from, reached));
    reached = Math.max(reached, to);
  }
  return covered;
}

/** Nodes that can be reached from a node, by the plainest search. */
function reachedFrom({ edges }: Network, start: readonly number[], passes: (edge: number) => boolean): Set<number> {
  const reached = new Set(start);
  for (let before = -1; before !== reached.size; ) {
    before = reached.size;
    for (const [index, { from, to }] of edges.entries()) {
      if (!passes(index)) continue;
      if (reached.has(from)) reached.add(to);
      if (reached.has(to)) reached.add(from);
    }
  }
  return reached;
}

const sourcesOf = (network: Network) => network.sources.flatMap(({ node }) => (node === null ? [] : [node]));

describe('any drawing', () => {
  it('has runs and openings that add up to each line', () => {
    fc.assert(
      fc.property(randomDrawing, (project) => {
        const network = buildNetwork(project);
        for (const { line, geometry } of geometriesOf(project)) {
          const runsM = (network.runsOfLine.get(line.id) ?? []).reduce((sum, index) => {
            const run = network.edges[index]!;
            return sum + (run.kind === 'run' ? run.lengthM : Number.NaN);
          }, 0);
          const gateways = [...project.gateway.values()].filter(({ lineId }) => lineId === line.id);
          const openings = gateways.flatMap((gateway) => gatewaySpan(gateway, geometry).openings);
          // Pieces of less than a millimetre are no runs; a few can add up.
          expect(Math.abs(runsM + coveredM(openings) - geometry.lengthM)).toBeLessThan(0.02);
        }
      }),
      runs,
    );
  });

  it('has sound edges and unique keys', () => {
    fc.assert(
      fc.property(randomDrawing, (project) => {
        const { nodes, edges, edgesAt } = buildNetwork(project);
        expect(new Set(nodes.map(({ key }) => key)).size).toBe(nodes.length);
        expect(new Set(edges.map(({ key }) => key)).size).toBe(edges.length);
        for (const [index, { from, to }] of edges.entries()) {
          expect(edgesAt[from]).toContain(index);
          expect(edgesAt[to]).toContain(index);
        }
        expect(edgesAt.flat()).toHaveLength(edges.reduce((sum, { from, to }) => sum + (from === to ? 1 : 2), 0));
      }),
      runs,
    );
  });

  it('joins just those lines that touch, found by trying every vertex against every segment', () => {
    const plain = randomDrawing.map((project) => ({
      ...project,
      gateway: new Map(),
      crossing: new Map(),
      switch: new Map(),
    }));
    fc.assert(
      fc.property(plain, (project: Project) => {
        const network = buildNetwork(project);
        const lines = geometriesOf(project);
        const touch = (a: number, b: number): boolean => {
          const [p, q] = [lines[a]!.geometry.xy, lines[b]!.geometry.xy];
          return p.some((vertex) => q.slice(1).some((end, i) => nearestOnSegment(vertex, q[i]!, end).distanceM <= 0.3));
        };
        for (let a = 0; a < lines.length; a++) {
          const nodes = (network.runsOfLine.get(lines[a]!.line.id) ?? []).map((run) => network.edges[run]!.from);
          const connected = reachedFrom(network, nodes.slice(0, 1), (edge) => network.edges[edge]!.kind === 'run');
          const expected = new Set([a]);
          for (const line of expected) {
            for (let b = 0; b < lines.length; b++) if (touch(line, b) || touch(b, line)) expected.add(b);
          }
          const found = lines.flatMap(({ line }, b) => {
            const first = network.runsOfLine.get(line.id)?.[0];
            return first !== undefined && connected.has(network.edges[first]!.from) ? [b] : [];
          });
          expect(found).toEqual([...expected].sort((m, n) => m - n));
        }
      }),
      runs,
    );
  });

  it('does not depend on what was worked out before', () => {
    fc.assert(
      fc.property(randomDrawing, randomDrawing, (first, second) => {
        const mixed: Project = { ...first, gateway: second.gateway, crossing: second.crossing, switch: second.switch };
        buildNetwork(first);
        const warm = buildNetwork(mixed);
        const copied = structuredClone(mixed);
        expect(warm).toEqual(buildNetwork(copied));
      }),
      { seed: 21, numRuns: 200 },
    );
  });

  it('is fed as the plainest search says, and each only way is one', () => {
    fc.assert(
      fc.property(randomDrawing, (project) => {
        const network = buildNetwork(project);
        const passes = passesNormally(network);
        const feed = feedOf(network, passes);
        const fed = reachedFrom(network, sourcesOf(network), passes);
        expect(new Set(feed.order)).toEqual(fed);
        for (const [index] of network.edges.entries()) {
          const without = reachedFrom(network, sourcesOf(network), (edge) => edge !== index && passes(edge));
          const isOnlyWay = passes(index) && without.size < fed.size;
          expect(feed.onlyWay[index] === 1).toBe(isOnlyWay);
          if (!isOnlyWay) continue;
          const { from, to } = network.edges[index]!;
          const far = feed.edgeInto[to] === index ? to : from;
          const beyond = feed.order.slice(feed.positionOf[far], feed.lastOf[far]! + 1);
          expect(new Set(beyond)).toEqual(new Set([...fed].filter((node) => !without.has(node))));
        }
      }),
      { seed: 22, numRuns: 300 },
    );
  });

  it('has dead parts for all that is live and not fed, each run in one, each with a reason', () => {
    fc.assert(
      fc.property(randomDrawing, (project) => {
        const network = buildNetwork(project);
        const { edgeFed, deadParts } = reachOf(project, network);
        const dead = network.edges.flatMap(({ kind }, index) => (kind === 'run' && !edgeFed[index] ? [index] : []));
        const listed = deadParts.flatMap(({ edges }) => edges.filter((index) => network.edges[index]!.kind === 'run'));
        expect(listed.sort((a, b) => a - b)).toEqual(dead);
        for (const { why, lengthM } of deadParts) {
          expect(lengthM).toBeGreaterThan(0);
          expect(why.code).not.toBe('noEnergiser');
        }
      }),
      runs,
    );
  });

  it('has shortest ways as long as their edges', () => {
    fc.assert(
      fc.property(randomDrawing, (project) => {
        const network = buildNetwork(project);
        const ways = shortestWays(network);
        for (const [node, distanceM] of ways.distanceM.entries()) {
          if (distanceM === Infinity) continue;
          const lengthM = wayTo(network, ways, node).reduce((sum, index) => {
            const edge = network.edges[index]!;
            return sum + (edge.kind === 'run' ? edge.lengthM : edge.kind === 'switch' ? 0 : edge.cableLengthM);
          }, 0);
          expect(lengthM).toBeCloseTo(distanceM, 6);
          for (const index of network.edgesAt[node]!) {
            const edge = network.edges[index]!;
            const other = edge.from === node ? edge.to : edge.from;
            const edgeM = edge.kind === 'run' ? edge.lengthM : edge.kind === 'switch' ? 0 : edge.cableLengthM;
            expect(ways.distanceM[other]).toBeLessThanOrEqual(distanceM + edgeM);
          }
        }
      }),
      { seed: 23, numRuns: 300 },
    );
  });
});
