import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { thingSchema } from '../../../core/api/thingSchemas.ts';
import { checkedThing } from '../../../core/exchange/intake/checkedThing.ts';
import type { PreviewFeature } from '../../../core/exchange/preview/types.ts';
import { fieldsOf, kinds } from '../../../core/kinds/allKinds.ts';
import type { Fields, NumberShape, Shape } from '../../../core/kinds/describe.ts';
import {
  newCrossing,
  newFenceLine,
  newGateway,
  newProperty,
  startingFenceTypes,
} from '../../../core/model/defaults.ts';
import { changeThing } from '../../../core/model/edits/changeThing.ts';
import { placeGateway } from '../../../core/model/edits/placeGateway.ts';
import { setCrossing } from '../../../core/model/edits/setCrossing.ts';
import { setGatewayWidth } from '../../../core/model/edits/setGatewayWidth.ts';
import { limitOf } from '../../../core/model/edits/support/checkFields.ts';
import { projectOf, propertyOf, put } from '../../../core/model/project.ts';
import type { Crossing } from '../../../core/model/things.ts';
import { inEnglish } from '../../support/english.ts';

describe('the bounds of every figure', () => {
  const figures = kinds.flatMap((kind) => figuresOf(kind, fieldsOf(kind)));

  it('lie within what a file may hold, so that what an edit sets can be read again', () => {
    for (const [path, { bounds, file }] of figures) {
      expect(bounds.max, path).toBeLessThanOrEqual(file.max);
      expect(bounds.min, path).toBeGreaterThanOrEqual(file.min);
      if (file.above) expect(bounds.above === true || bounds.min > file.min, path).toBe(true);
      expect(bounds.min, path).toBeLessThan(bounds.max);
    }
  });

  /** What the panels, the plan, the record and the reader once said otherwise of, each now said once. */
  it.each([
    ['crossing.pipeBoreMm', 5, 200],
    ['property.crossings.pipeBoreMm', 5, 200],
    ['crossing.depthM', 0, 3],
    ['crossingRecord.depths.depthM', 0, 3],
    ['crossing.riserHeightM', 0, 10],
    ['crossing.tailM', 0, 10],
    ['crossing.allowanceM', 0, 10],
    ['crossing.earthConnectionM', 0, 3],
    ['crossing.bowM', 0, 60],
    ['crossingRecord.opening.bowM', 0, 60],
    ['gateway.widthM', 0.5, 60],
    ['fenceType.liveWires', 0, 30],
    ['fenceType.postSpacingM', 0.5, 100],
    ['energiser.openCircuitV', 500, 20_000],
    ['energiser.into500OhmV', 100, 20_000],
    ['earthField.rods', 1, 100],
    ['earthField.rodLengthM', 0.3, 10],
    ['earthField.spacingM', 0.3, 50],
    ['earthTest.earthV', 0, 20_000],
    ['property.divide.maxSectionM', 50, 1e6],
    ['property.divide.maxGateways', 1, 1000],
    ['property.divide.costs.gateway', 0.1, 100],
    ['switchCandidate.cost', 0.1, 100],
    ['property.power.soilOhmM', 1, 1e5],
    ['property.power.growth.leakageOhmKm', 10, 1e9],
    ['fenceLine.growth.leakageOhmKm', 10, 1e9],
    ['rollOnHand.lengthM', 0.1, 10_000],
    ['kit.parts.amount', 0.01, 1000],
    ['buriedPoint.ties.seM', 0.001, 10],
  ])('%s: from %d to %d', (path, min, max) => {
    expect(new Map(figures).get(path)!.bounds).toEqual({ min, max });
  });

  it('stand in no panel beside its description', () => {
    const own = /\b(?:min|max|minM|maxM)=\{-?[0-9]/;
    const files = readdirSync('renderer/panels', { recursive: true, encoding: 'utf8' }).filter((file) =>
      file.endsWith('.tsx'),
    );
    const found = files.filter((file) => own.test(readFileSync(`renderer/panels/${file}`, 'utf8'))).sort();
    // These ask for what no thing holds: a bearing to turn by, an import's tolerance, a track, a scale, a target, a stretch.
    expect(found).toEqual([
      'coordinates/PlaceOnEarth.tsx',
      'dialogs/PrintDialog.tsx',
      'exchange/LineTreatment.tsx',
      'exchange/ReadingProgress.tsx',
      'find/DigView.tsx',
      'power/Earth.tsx',
      'power/ProfileView.tsx',
      'record/TrackField.tsx',
    ]);
  });
});

describe('a bow wider than its opening', () => {
  const line = newFenceLine({
    id: 'F',
    name: 'F1',
    typeId: 'ft-2',
    path: [
      [0, 0],
      [0.002, 0],
    ],
  });
  const gateway = newGateway({ id: 'G', name: 'G1', lineId: 'F', atM: 50 });
  const property = newProperty('Bows', [0, 0]);
  const crossing = newCrossing('X', gateway, property.crossings);
  const project = projectOf([property, ...startingFenceTypes(), line, gateway, crossing]);
  const refused = /bow of the crossing can't be 5\.00 m: gateway G1 has a width of 4\.20 m\. Enter a smaller one/;

  it('is refused by every edit, and by an import', () => {
    expect(() => changeThing({ kind: 'crossing', id: 'X', to: { bowM: 5 } })(project)).toThrow(refused);
    expect(() => setCrossing({ gatewayId: 'G', to: { bowM: 5 } }, () => 'X2')(project)).toThrow(refused);
    const without = projectOf([property, ...startingFenceTypes(), line, gateway]);
    expect(() => setCrossing({ gatewayId: 'G', to: { bowM: 5 } }, () => 'X2')(without)).toThrow(refused);
    const tooWide = imported({ ...crossing, bowM: 5 });
    expect(tooWide.ok ? '' : inEnglish(tooWide.why)).toContain("can't be 5.00 m");
    expect(imported({ ...crossing, bowM: 4.2 })).toMatchObject({ ok: true });
  });

  it('is the most that a form offers', () => {
    expect(limitOf(project, crossing, 'bowM')?.most).toBe(4.2);
    expect(limitOf(project, crossing, 'depthM')).toBeNull();
  });

  it('is not made by narrowing the opening', () => {
    const bowed = changeThing({ kind: 'crossing', id: 'X', to: { bowM: 3 } })(project);
    expect(() => setGatewayWidth({ gatewayId: 'G', widthM: 2.5 })(bowed)).toThrow(
      /bow of the crossing can't be 3\.00 m/,
    );
    expect(setGatewayWidth({ gatewayId: 'G', widthM: 3 })(bowed).gateway.get('G')!.widthM).toBe(3);
  });

  it('stays as an older file holds it, and so does all else that nobody could set any more', () => {
    const old: Crossing = { ...crossing, bowM: 5, depthM: 8, pipeBoreMm: 300 };
    expect(thingSchema.safeParse(old).success).toBe(true);
    const held = put(project, old);
    const noted = changeThing({ kind: 'crossing', id: 'X', to: { note: 'over rock' } })(held);
    expect(noted.crossing.get('X')).toEqual({ ...old, note: 'over rock' });
    expect(setGatewayWidth({ gatewayId: 'G', widthM: 4 })(held).crossing.get('X')).toBe(old);
    expect(imported({ ...old, note: 'from the map file' }, held)).toMatchObject({ ok: true });
  });

  it('leaves the width itself bounded in every edit', () => {
    expect(() => setGatewayWidth({ gatewayId: 'G', widthM: 61 })(project)).toThrow(/from 0\.5 to 60 m/);
    const wide = { lineId: 'F', atM: 120, widthM: 0.3 };
    expect(() => placeGateway(wide, (kind) => `${kind}-9`)(project)).toThrow(/from 0\.5 to 60 m/);
    expect(propertyOf(project)).toBe(property);
  });

  function imported(thing: Crossing, into = project) {
    const { kind, id, ...fields } = thing;
    const feature = { ours: { kind, id, fields }, path: [], shape: 'point' } as unknown as PreviewFeature;
    return checkedThing(into, feature, new Map());
  }
});

function figuresOf(path: string, fields: Fields): (readonly [string, NumberShape])[] {
  const inShape = (at: string, shape: Shape): (readonly [string, NumberShape])[] => {
    switch (shape.as) {
      case 'number':
        return [[at, shape]];
      case 'orNone':
      case 'list':
        return inShape(at, shape.of.shape);
      case 'either':
      case 'tuple':
        return shape.of.flatMap((each) => inShape(at, each.shape));
      case 'record':
        return figuresOf(at, shape.fields);
      case 'tagged':
        return Object.values(shape.cases).flatMap((of) => figuresOf(at, of));
      default:
        return [];
    }
  };
  return Object.entries(fields).flatMap(([name, { shape }]) => inShape(`${path}.${name}`, shape));
}
