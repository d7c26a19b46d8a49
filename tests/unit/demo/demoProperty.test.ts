import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { demoJson, demoOrigin, demoThings } from '../../../assets/demo/makeDemo.ts';
import { facesOfLines } from '../../../core/geometry/facesOfLines.ts';
import { distanceM, ringAreaM2 } from '../../../core/geometry/geodesic.ts';
import { createLocalPlane } from '../../../core/geometry/localPlane.ts';
import { pointInRing } from '../../../core/geometry/ring.ts';
import { whyNotFields } from '../../../core/model/edits/support/checkFields.ts';
import { fieldRules } from '../../../core/model/edits/support/fieldRules.ts';
import { allThings, projectOf, propertyOf } from '../../../core/model/project.ts';
import { buildNetwork } from '../../../core/network/buildNetwork.ts';
import { reachOf } from '../../../core/network/reach.ts';

const file = join(import.meta.dirname, '../../../assets/demo/demo-property.json');
const project = projectOf(demoThings());
const network = buildNetwork(project);
const plane = createLocalPlane(demoOrigin);

describe('the demo property', () => {
  it('is what its generator makes: run `npm run demo:make` after a change of it', () => {
    expect(readFileSync(file, 'utf8')).toBe(demoJson());
  });

  it('says that it is invented', () => {
    expect(propertyOf(project).invented).toBe(true);
    expect(propertyOf(project).note).toContain('invented');
  });

  it('lies in the open ocean, more than 1,300 km from any land', () => {
    // Places read off an atlas: Gough Island, Tristan da Cunha, South Georgia, the coast of South America.
    for (const land of [
      [-9.9, -40.3],
      [-12.3, -37.1],
      [-36.8, -54.3],
      [-53.5, -34.0],
    ] as const) {
      expect(distanceM(demoOrigin, land)).toBeGreaterThan(1_300_000);
    }
  });

  it('is a mixed farm of about 600 ha with 25 to 40 named paddocks', () => {
    const paddocks = facesOfLines([...project.fenceLine.values()].map(({ path }) => path.map(plane.toXy)));
    const areaHa = paddocks.reduce((sum, { shell }) => sum + ringAreaM2(shell.map(plane.toLonLat)) / 10_000, 0);
    expect(areaHa).toBeGreaterThan(570);
    expect(areaHa).toBeLessThan(630);
    expect(paddocks.length).toBeGreaterThanOrEqual(25);
    expect(paddocks.length).toBeLessThanOrEqual(40);
    for (const { shell } of paddocks) {
      const names = [...project.paddock.values()].filter(({ at }) => pointInRing(plane.toXy(at), shell));
      expect(names).toHaveLength(1);
    }
  });

  it('has more than 30 gateways, single and double, planned and built, with and without a crossing', () => {
    const gateways = [...project.gateway.values()];
    expect(gateways.length).toBeGreaterThan(30);
    const count = (holds: (gateway: (typeof gateways)[number]) => boolean) => gateways.filter(holds).length;
    expect(count(({ leaves }) => leaves === 2)).toBeGreaterThan(3);
    expect(count(({ vehicles }) => vehicles)).toBeGreaterThan(3);
    expect(count(({ status }) => status === 'built')).toBeGreaterThan(10);
    expect(count(({ status }) => status === 'planned')).toBeGreaterThan(5);
    expect(project.crossing.size).toBeGreaterThan(20);
    expect(project.crossing.size).toBeLessThan(gateways.length);
  });

  it('is one live network, fed everywhere, with exactly two independent rings', () => {
    expect(network.problems).toEqual([]);
    const reach = reachOf(project, network);
    expect(reach.deadParts).toEqual([]);
    expect([...reach.edgeFed].every((fed) => fed === 1)).toBe(true);
    expect(network.edges.length - network.nodes.length + 1).toBe(2);
  });

  it('joins at shared vertices, not by the tolerance', () => {
    const strict = projectOf(
      [...allThings(project)].map((thing) => (thing.kind === 'property' ? { ...thing, snapToleranceM: 0.002 } : thing)),
    );
    expect(buildNetwork(strict).edges.length).toBe(network.edges.length);
  });

  it('holds only values that the edits would accept', () => {
    for (const { kind, id, ...fields } of allThings(project)) {
      const needed = Object.entries(fieldRules[kind]).filter(([, rule]) => rule(undefined) !== null);
      expect(Object.keys(fields)).toEqual(expect.arrayContaining(needed.map(([field]) => field)));
      expect(whyNotFields(project, kind, id, fields)).toBeNull();
    }
  });

  it('has what the checks and the screens need to show', () => {
    const services = [...project.service.values()];
    expect(services.some(({ what, open }) => what === 'road' && open === 'public')).toBe(true);
    expect(services.some(({ what, voltageV }) => what === 'powerLine' && voltageV === 11_000)).toBe(true);
    for (const what of ['creek', 'waterPipe', 'earthElectrode']) {
      expect(services.some((service) => service.what === what)).toBe(true);
    }
    const statuses = new Set([...project.switch.values()].map(({ status }) => status));
    expect(statuses).toEqual(new Set(['built', 'planned']));
    for (const table of ['energiser', 'leadOut', 'earthField', 'reading', 'post'] as const) {
      expect(project[table].size).toBeGreaterThan(0);
    }
  });
});
