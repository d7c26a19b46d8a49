import { describe, expect, test } from 'vitest';
import { newEarthField, newProperty } from '../../../core/model/defaults.ts';
import { withDependants } from '../../../core/model/edits/deleteThings.ts';
import { placeOnEarth } from '../../../core/model/edits/placeOnEarth.ts';
import { type Project, propertyOf, put } from '../../../core/model/project.ts';
import { newBuriedPoint, newCrossingRecord } from '../../../core/model/recordDefaults.ts';
import type { EarthTest, Photo } from '../../../core/model/recordThings.ts';
import { builtOnly } from '../../../core/record/builtOnly.ts';
import type { ChangedField } from '../../../core/record/changedFields.ts';
import { changeSinceInWords, changesSince } from '../../../core/record/changesSince.ts';
import { differencesFromPlan } from '../../../core/record/differences.ts';
import { handOver, nextHandoverNumber } from '../../../core/record/edits/handOver.ts';
import { markBuilt, markPlanned } from '../../../core/record/edits/markBuilt.ts';
import { recordCrossing } from '../../../core/record/edits/recordCrossing.ts';
import { surveyOf } from '../../../core/survey/survey.ts';
import { at, bridgedGateway, drawing, energiser, gateSwitch, line, strainer } from '../../support/drawings.ts';
import { inEnglish } from '../../support/english.ts';

const fence = line('F1', [
  [0, 0],
  [200, 0],
]);
const [gateway, crossing] = bridgedGateway('G1', 'F1', 50);
const cutOut = gateSwitch('S1', 'G1', 'start');
const plain = drawing(fence, gateway, crossing, cutOut, strainer('P1', [45, 5]));

const words = { date: '2031-05-02', by: 'the crew' };
const refs = [
  { kind: 'gateway' as const, id: 'G1' },
  { kind: 'crossing' as const, id: 'X-G1' },
];
const built = (project: Project) => markBuilt(refs, words, surveyOf(project))(project);
const said = (changes: readonly ChangedField[]) =>
  changes.map(({ field, before, after }) => ({
    field: inEnglish(field),
    before: inEnglish(before),
    after: inEnglish(after),
  }));
const differences = (project: Project) => differencesFromPlan(project, surveyOf(project));

describe('planned and built', () => {
  test('what is marked built keeps its plan, and is no different from it yet', () => {
    const project = built(plain);
    expect(project.gateway.get('G1')!.status).toBe('built');
    expect(project.builtMark.get('built:gateway:G1')).toMatchObject({ date: '2031-05-02', by: 'the crew' });
    expect(project.builtMark.get('built:gateway:G1')!.planned!.thing).toEqual(gateway);
    expect(differences(project)).toEqual([]);
  });

  test('real values that differ from the plan are listed in words, and how far it was moved', () => {
    const now = built(plain);
    const moved = put(
      now,
      { ...now.gateway.get('G1')!, atM: 53, widthM: 4.5 },
      { ...now.crossing.get('X-G1')!, depthM: 0.45, pipeBoreMm: 25 },
    );
    const [ofGateway, ofCrossing] = differences(moved);
    expect(inEnglish(ofGateway!.name)).toBe('G1');
    // The start post went from 48 to 50.75, the end post from 52 to 55.25.
    expect(ofGateway!.movedM).toBeCloseTo(3.25, 3);
    expect(said(ofGateway!.changes)).toContainEqual({ field: 'width', before: '4.00 m', after: '4.50 m' });
    expect(said(ofCrossing!.changes)).toEqual([
      { field: 'depth', before: '0.30 m', after: '0.45 m' },
      { field: 'pipe bore', before: '19 mm', after: '25 mm' },
    ]);
  });

  test('another cable is named as people know it', () => {
    const now = built(plain);
    const changed = put(now, { ...now.crossing.get('X-G1')!, cableId: 'cable-copper-6mm2' });
    expect(said(differences(changed)[0]!.changes)).toEqual([
      {
        field: 'cable',
        before: 'Fence lead-out cable, steel core 2.5 mm, rated 10 kV or more',
        after: 'Building wire, copper 6 mm², not made for a fence',
      },
    ]);
  });

  test('a crossing that was taped elsewhere than planned has moved', () => {
    const point = { ...newBuriedPoint('b', 'X-G1', 'bend'), offset: { alongM: 2, leftM: 1.6 } };
    const [difference] = differences(put(built(plain), point));
    // Planned with a bow of a quarter of the opening: 1.00 m.
    expect(inEnglish(difference!.name)).toBe('crossing at G1');
    expect(difference!.movedM).toBeCloseTo(0.6, 2);
  });

  test('marking again keeps the first plan; taking the mark off leaves the values', () => {
    const once = built(plain);
    const changed = put(once, { ...once.gateway.get('G1')!, widthM: 5 });
    const again = markBuilt(refs, { date: null, by: '' }, surveyOf(changed))(changed);
    expect(again.builtMark.get('built:gateway:G1')).toMatchObject({ date: null, planned: { thing: { widthM: 4 } } });
    const planned = markPlanned(refs)(again);
    expect(planned.gateway.get('G1')).toMatchObject({ status: 'planned', widthM: 5 });
    expect(planned.builtMark.size).toBe(0);
  });

  test('marking what is marked just so changes nothing', () => {
    const once = built(plain);
    const again = built(once);
    for (const kind of ['gateway', 'crossing'] as const)
      expect([...again[kind].values()]).toEqual([...once[kind].values()]);
  });

  test('only what is built is counted as materials', () => {
    const onlyFence = put(plain, { ...fence, status: 'built' });
    expect(builtOnly(onlyFence).gateway.size).toBe(0);
    expect(builtOnly(onlyFence).fenceLine.size).toBe(1);
    expect(builtOnly(plain).fenceLine.size).toBe(0);
  });
});

describe('records go with what they are about', () => {
  test('a gateway takes its crossing with record, points, photos and mark', () => {
    const photo = { kind: 'photo', id: 'ph', of: { kind: 'crossing', id: 'X-G1' } } as Photo;
    const project = put(built(plain), newCrossingRecord('X-G1'), newBuriedPoint('b', 'X-G1', 'bend'), photo);
    const going = withDependants(project, [{ kind: 'gateway', id: 'G1' }]).map(({ kind }) => kind);
    expect(going).toEqual(
      expect.arrayContaining(['crossing', 'crossingRecord', 'buriedPoint', 'photo', 'builtMark', 'switch']),
    );
  });

  test('an earth field takes its tests', () => {
    const field = newEarthField('ef', 'E1', at([0, 0]));
    const earthTest = { kind: 'earthTest', id: 'et', earthFieldId: 'ef' } as EarthTest;
    const project = drawing(energiser('E1', [0, 0]), field, earthTest);
    expect(withDependants(project, [{ kind: 'energiser', id: 'E1' }])).toContain(earthTest);
  });

  test('a record of a crossing that is not there is refused', () => {
    expect(() => recordCrossing('nowhere', { soil: 'loam' })(plain)).toThrow('not in the property');
    expect(() => recordCrossing('X-G1', { depths: [{ alongM: -1, depthM: 0.3 }] })(plain)).toThrow('depths');
  });

  test('giving the property its place on earth carries ties and plans along', () => {
    const unplaced = { ...newProperty('Grid'), invented: true };
    const onGrid = put(plain, { ...propertyOf(plain), placed: false });
    expect(unplaced.placed).toBe(false);
    const tie = {
      from: { on: 'post', postId: 'P1' },
      postName: 'P1',
      postAt: at([45, 5]),
      distanceM: 5,
      seM: 0.01,
    } as const;
    const project = put(built(onGrid), { ...newBuriedPoint('b', 'X-G1', 'bend'), ties: [tie] });
    const handed = handOver({ date: '2031-05-02', by: '', to: '', note: '' }, () => 'h1')(project);
    const placed = placeOnEarth({ point: { grid: [0, 0], earth: [10, 50] }, gridNorthDeg: 90 })(handed);
    expect(placed.buriedPoint.get('b')!.ties[0]!.postAt).toEqual(placed.post.get('P1')!.at);
    const survey = surveyOf(placed);
    expect(placed.builtMark.get('built:gateway:G1')!.planned!.places[0]![0]).toBeCloseTo(
      survey.gateways.get('G1')!.startPostAt[0],
      9,
    );
    expect(differencesFromPlan(placed, survey)).toEqual([]);
    expect(changesSince(placed.handover.get('h1')!, placed, survey)).toEqual([]);
  });
});

describe('handovers', () => {
  const handed = handOver({ date: '2031-05-02', by: 'the crew', to: 'the owner', note: '' }, () => 'h1')(built(plain));
  const since = (project: Project) =>
    changesSince(handed.handover.get('h1')!, project, surveyOf(project)).map((change) =>
      inEnglish(changeSinceInWords(change)),
    );

  test('are numbered, and nothing has changed at once', () => {
    expect(handed.handover.get('h1')).toMatchObject({ number: 1 });
    expect(nextHandoverNumber(handed)).toBe(2);
    expect(since(handed)).toEqual([]);
  });

  test('list what was moved, changed, dug again, added and taken away since', () => {
    const now = put(
      handed,
      { ...handed.gateway.get('G1')!, atM: 60 },
      { ...cutOut, normally: 'open' as const },
      { ...newBuriedPoint('b', 'X-G1', 'bend'), offset: { alongM: 2, leftM: 1 } },
      strainer('P9', [0, 9]),
    );
    const without = { ...now, post: new Map([...now.post].filter(([id]) => id !== 'P1')) };
    const words = since(without);
    expect(words).toContain('gateway G1: moved 10.0 m; at 50.00 m, now 60.00 m');
    expect(words).toContain('cut-out switch S1: moved 10.0 m; normally On, now Off');
    expect(words).toContain('buried point of the crossing at G1: new');
    expect(words).toContain('post P9: new');
    expect(words).toContain('post P1: gone');
  });

  test('a frozen handover stays as it was when the property is edited', () => {
    const now = put(handed, { ...handed.gateway.get('G1')!, widthM: 9 });
    const frozen = now.handover.get('h1')!.things.find(({ kind }) => kind === 'gateway');
    expect(frozen).toMatchObject({ widthM: 4 });
  });
});
