import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { distanceM, pathLengthM } from '../../../../core/geometry/geodesic.ts';
import type { Xy } from '../../../../core/geometry/types.ts';
import { newProperty } from '../../../../core/model/defaults.ts';
import { acceptPlan } from '../../../../core/model/edits/acceptPlan.ts';
import { addFenceLine } from '../../../../core/model/edits/addFenceLine.ts';
import { deleteThings } from '../../../../core/model/edits/deleteThings.ts';
import { fixCrossing, whyNotFixCrossing } from '../../../../core/model/edits/fixCrossing.ts';
import { joinGap, whyNotJoinGap } from '../../../../core/model/edits/joinGap.ts';
import { joinLines, whyNotJoinLines } from '../../../../core/model/edits/joinLines.ts';
import { placeGateway } from '../../../../core/model/edits/placeGateway.ts';
import { placeOnEarth, whyNotPlaceOnEarth } from '../../../../core/model/edits/placeOnEarth.ts';
import { placeSwitch } from '../../../../core/model/edits/placeSwitch.ts';
import { splitLine, whyNotSplitLine } from '../../../../core/model/edits/splitLine.ts';
import { pathIn } from '../../../../core/model/edits/support/path.ts';
import { type Project, propertyOf, put } from '../../../../core/model/project.ts';
import { builtMarkId } from '../../../../core/model/recordDefaults.ts';
import type { BuiltMark, Photo } from '../../../../core/model/recordThings.ts';
import type { LonLat, Post, Stage, SwitchRule } from '../../../../core/model/things.ts';
import { putInStage } from '../../../../core/quantities/edits/changeStages.ts';
import { lonLatAt } from '../../../../core/shapes/measuredPath.ts';
import { inEnglish } from '../../../support/english.ts';
import { countingIds } from '../../../support/ids.ts';
import { at, edited, emptyProject, randomProject } from '../../../support/randomProjects.ts';

const typeId = 'ft-2';

function lineOf(...corners: Xy[]): Project {
  return addFenceLine({ path: corners.map(([x, y]) => at(x, y)), typeId }, countingIds())(emptyProject());
}

/** Where each gateway and each switch along a line stands. */
function places(project: Project): Map<string, LonLat> {
  const found = new Map<string, LonLat>();
  const pathOf = (lineId: string) => project.fenceLine.get(lineId)!.path;
  for (const { id, lineId, atM } of project.gateway.values())
    found.set(id, lonLatAt(pathIn(project, pathOf(lineId)), atM));
  for (const { id, place } of project.switch.values()) {
    if (place.on === 'line') found.set(id, lonLatAt(pathIn(project, pathOf(place.lineId)), place.atM));
    if (place.on === 'lineEnd') found.set(id, pathOf(place.lineId).at(place.end === 'start' ? 0 : -1)!);
  }
  return found;
}

function expectSamePlaces(before: Project, after: Project, withinM = 0.01): void {
  const now = places(after);
  for (const [id, place] of places(before)) expect(distanceM(place, now.get(id)!)).toBeLessThan(withinM);
}

const spring: Stage = { kind: 'stage', id: 'spring', name: 'This spring', rank: 0, note: '' };

function newBuiltMark(thingId: string): BuiltMark {
  const id = builtMarkId('fenceLine', thingId);
  return { kind: 'builtMark', id, thingKind: 'fenceLine', thingId, date: null, by: '', note: '', planned: null };
}

function photoOf(lineId: string): Photo {
  const picture = { blobId: 'b', thumbId: 't', widthPx: 4, heightPx: 3, takenAt: null, gps: null, fileName: 'a.jpg' };
  return { kind: 'photo', id: 'photo-1', of: { kind: 'fenceLine', id: lineId }, ...picture, caption: '' };
}

describe('splitLine and joinLines', () => {
  it('leave everything where it stands', () => {
    let split = 0;
    fc.assert(
      fc.property(
        randomProject,
        fc.nat(20),
        fc.integer({ min: 0, max: 1000 }).map((n) => n / 1000),
        (before, n, share) => {
          const line = [...before.fenceLine.values()][n % before.fenceLine.size];
          if (!line) return;
          const wanted = { lineId: line.id, atM: share * pathIn(before, line.path).lengthM };
          if (whyNotSplitLine(wanted)(before)) return;
          split++;
          const after = splitLine(wanted, countingIds(100))(before);
          expectSamePlaces(before, after);
          const pair = { lineId: line.id, otherId: 'fenceLine-101' };
          if (!after.fenceLine.has(pair.otherId)) return;
          const back = joinLines(pair)(after);
          expectSamePlaces(before, back);
          expect(pathLengthM(back.fenceLine.get(line.id)!.path)).toBeCloseTo(pathLengthM(line.path), 3);
        },
      ),
      { seed: 21, numRuns: 300 },
    );
    expect(split).toBeGreaterThan(100);
  });

  it('put a switch at the cut at the end of its piece, and along the line again after joining', () => {
    const before = placeSwitch(
      { place: { on: 'line', lineId: 'fenceLine-1', atM: 40 } },
      countingIds(),
    )(lineOf([0, 0], [100, 0]));
    const cut = splitLine({ lineId: 'fenceLine-1', atM: 40 }, countingIds(1))(before);
    expect(cut.switch.get('switch-1')!.place).toEqual({ on: 'lineEnd', lineId: 'fenceLine-1', end: 'end' });
    const back = joinLines({ lineId: 'fenceLine-1', otherId: 'fenceLine-2' })(cut);
    expect(back.switch.get('switch-1')!.place).toEqual({
      on: 'line',
      lineId: 'fenceLine-1',
      atM: expect.closeTo(40, 4),
    });
  });

  it('swap start and end, left and right where the joined line runs the other way', () => {
    const newId = countingIds();
    let project = lineOf([0, 0], [100, 0]);
    project = addFenceLine({ path: [at(200, 0), at(100, 0)], typeId }, countingIds(1))(project);
    project = placeGateway({ lineId: 'fenceLine-2', atM: 30, hungFrom: 'start', opens: 'left' }, newId)(project);
    project = placeSwitch({ place: { on: 'gateway', gatewayId: 'gateway-1', post: 'start' } }, newId)(project);
    const joined = joinLines({ lineId: 'fenceLine-1', otherId: 'fenceLine-2' })(project);
    expectSamePlaces(project, joined);
    expect(joined.gateway.get('gateway-1')).toMatchObject({ lineId: 'fenceLine-1', hungFrom: 'end', opens: 'right' });
    expect(joined.crossing.get('crossing-1')!.bowSide).toBe('right');
    expect(joined.switch.get('switch-1')!.place).toEqual({ on: 'gateway', gatewayId: 'gateway-1', post: 'end' });
  });

  it('refuse with the reason', () => {
    const newId = countingIds();
    let project = lineOf([0, 0], [100, 0]);
    project = placeGateway({ lineId: 'fenceLine-1', atM: 50 }, newId)(project);
    project = addFenceLine({ path: [at(100, 0), at(100, 90)], typeId: 'ft-1' }, countingIds(1))(project);
    expect(whyNotSplitLine({ lineId: 'fenceLine-1', atM: 51 })(project)?.code).toBe('insideGateway');
    expect(whyNotSplitLine({ lineId: 'fenceLine-1', atM: 0 })(project)?.code).toBe('atEnd');
    expect(whyNotSplitLine({ lineId: 'fenceLine-1', atM: 101 })(project)?.code).toBe('offLine');
    expect(inEnglish(whyNotJoinLines({ lineId: 'fenceLine-1', otherId: 'fenceLine-2' })(project)?.message)).toContain(
      'fence types',
    );
  });

  it('keep the word on a strainer with its corner', () => {
    const rule = { kind: 'switchRule', id: 'strainer:fenceLine-1:2', rule: 'forbidden' } as const;
    const before = put(lineOf([0, 0], [100, 0], [100, 100], [200, 100]), rule);
    const cut = splitLine({ lineId: 'fenceLine-1', atM: 100 }, countingIds(1))(before);
    expect([...cut.switchRule.keys()]).toEqual(['strainer:fenceLine-2:1']);
    const back = joinLines({ lineId: 'fenceLine-1', otherId: 'fenceLine-2' })(cut);
    expect([...back.switchRule.keys()]).toEqual(['strainer:fenceLine-1:2']);
  });
});

describe('what is said of a line', () => {
  const built = put(
    putInStage(['fenceLine-1'], 'spring')(put(lineOf([0, 0], [400, 0]), spring)),
    { ...newBuiltMark('fenceLine-1'), date: '2031-05-02' },
    photoOf('fenceLine-1'),
  );
  const cut = splitLine({ lineId: 'fenceLine-1', atM: 100 }, countingIds(1))(built);

  it('holds for both pieces of it: when it was built, and its stage', () => {
    expect(cut.builtMark.get('built:fenceLine:fenceLine-2')).toMatchObject({
      date: '2031-05-02',
      thingId: 'fenceLine-2',
    });
    expect(cut.stageMark.get('in:fenceLine-2')).toMatchObject({ stageId: 'spring', thingId: 'fenceLine-2' });
  });

  it('goes to the line that it is joined onto, where that has none', () => {
    const other = addFenceLine({ path: [at(400, 0), at(600, 0)], typeId }, () => 'further')(built);
    const joined = joinLines({ lineId: 'further', otherId: 'fenceLine-1' })(other);
    expect([...joined.photo.values()].map(({ of }) => of?.id)).toEqual(['further']);
    expect([...joined.builtMark.values()].map(({ thingId }) => thingId)).toEqual(['further']);
    expect(joined.stageMark.size).toBe(0);
  });
});

describe('the word on a strainer post', () => {
  const post = (id: string, x: number, y: number): Post => {
    return { kind: 'post', id, name: id, at: at(x, y), role: 'strainer', note: '' };
  };
  const word = (id: string, rule: SwitchRule['rule'] = 'forbidden'): SwitchRule => ({ kind: 'switchRule', id, rule });
  const before = put(
    lineOf([0, 0], [100, 0], [300, 0]),
    post('P', 50, 0),
    post('Q', 200, 0),
    word('strainer:P:fenceLine-1', 'forced'),
    word('strainer:Q:fenceLine-1'),
  );
  const words = (project: Project) => [...project.switchRule.values()].map(({ id, rule }) => `${id} ${rule}`).sort();

  it('goes with its piece when the line is split, and comes back when it is joined, the other way round too', () => {
    const cut = splitLine({ lineId: 'fenceLine-1', atM: 120 }, countingIds(1))(before);
    expect(words(cut)).toEqual(['strainer:P:fenceLine-1 forced', 'strainer:Q:fenceLine-2 forbidden']);
    const back = joinLines({ lineId: 'fenceLine-1', otherId: 'fenceLine-2' })(cut);
    expect(words(back)).toEqual(words(before));
    const turned = joinLines({ lineId: 'fenceLine-2', otherId: 'fenceLine-1' })(cut);
    expect(words(turned)).toEqual(['strainer:P:fenceLine-2 forced', 'strainer:Q:fenceLine-2 forbidden']);
  });

  it('of two at the seam of joined lines, the one of the line that stays holds', () => {
    const cut = splitLine({ lineId: 'fenceLine-1', atM: 200 }, countingIds(1))(before);
    const both = put(cut, word('strainer:Q:fenceLine-1', 'forced'), word('strainer:Q:fenceLine-2', 'forbidden'));
    const joined = joinLines({ lineId: 'fenceLine-1', otherId: 'fenceLine-2' })(both);
    expect(joined.switchRule.get('strainer:Q:fenceLine-1')!.rule).toBe('forced');
    expect(joined.switchRule.size).toBe(2);
  });

  it('goes when the post or the line goes', () => {
    expect(words(deleteThings([{ kind: 'post', id: 'P' }])(before))).toEqual(['strainer:Q:fenceLine-1 forbidden']);
    expect(words(deleteThings([{ kind: 'fenceLine', id: 'fenceLine-1' }])(before))).toEqual([]);
  });

  it('of a drawn switch goes with it, by hand or by the plan', () => {
    const place = { on: 'line', lineId: 'fenceLine-1', atM: 150 } as const;
    const drawn = put(placeSwitch({ place }, countingIds())(before), word('switch:switch-1'));
    const unpinned = put(drawn, { ...drawn.switch.get('switch-1')!, pinned: false });
    expect(words(deleteThings([{ kind: 'switch', id: 'switch-1' }])(drawn))).toEqual(words(before));
    expect(words(acceptPlan({ missing: [], surplus: ['switch-1'] }, countingIds())(unpinned))).toEqual(words(before));
  });
});

describe('fixCrossing', () => {
  it('is for two lines; one that crosses itself is another matter', () => {
    const before = lineOf([0, 0], [100, 0], [50, 50], [50, -50]);
    const wanted = { lineId: 'fenceLine-1', otherId: 'fenceLine-1', near: at(50, 0) };
    expect(whyNotFixCrossing(wanted)(before)?.code).toBe('sameLine');
  });

  it('gives both lines the same vertex where they cross', () => {
    const before = addFenceLine({ path: [at(40, -50), at(60, 50)], typeId }, countingIds(1))(lineOf([0, 0], [100, 0]));
    const wanted = { lineId: 'fenceLine-1', otherId: 'fenceLine-2', near: at(50, 0) };
    const after = fixCrossing(wanted)(before);
    const [a, b] = ['fenceLine-1', 'fenceLine-2'].map((id) => after.fenceLine.get(id)!.path[1]!);
    expect(a).toEqual(b);
    expect(distanceM(a!, at(50, 0))).toBeLessThan(1e-6);
    expect(whyNotFixCrossing(wanted)(after)?.code).toBe('noCrossing');
  });
});

describe('joinGap', () => {
  it('moves the end onto the other line, or onto its end where that is nearest', () => {
    const trunk = lineOf([0, 0], [100, 0]);
    const spur = addFenceLine({ path: [at(50, 2), at(50, 90)], typeId }, countingIds(1))(trunk);
    const joined = joinGap({ lineId: 'fenceLine-2', end: 'start', toLineId: 'fenceLine-1' })(spur);
    expect(distanceM(joined.fenceLine.get('fenceLine-2')!.path[0]!, at(50, 0))).toBeLessThan(1e-6);
    const onward = addFenceLine({ path: [at(101, 1), at(190, 1)], typeId }, countingIds(1))(trunk);
    const met = joinGap({ lineId: 'fenceLine-2', end: 'start', toLineId: 'fenceLine-1' })(onward);
    expect(met.fenceLine.get('fenceLine-2')!.path[0]).toEqual(trunk.fenceLine.get('fenceLine-1')!.path[1]);
    expect(whyNotJoinGap({ lineId: 'fenceLine-2', end: 'end', toLineId: 'fenceLine-1' })(spur)?.code).toBe('tooWide');
  });
});

describe('placeOnEarth', () => {
  const unplaced = (project: Project): Project => put(project, { ...propertyOf(project), placed: false });

  it('keeps every length to 1 in 10,000 and every gateway at its share, wherever it is put', () => {
    const north = fc.double({ min: -180, max: 180, noNaN: true });
    const place = fc.tuple(north, fc.double({ min: -70, max: 70, noNaN: true })) as fc.Arbitrary<LonLat>;
    const grid = fc.tuple(fc.integer({ min: -9000, max: 9000 }), fc.integer({ min: -9000, max: 9000 }));
    fc.assert(
      fc.property(randomProject, place, grid, north, (drawn, earth, grid, gridNorthDeg) => {
        const before = unplaced(drawn);
        const after = placeOnEarth({ point: { grid, earth }, gridNorthDeg })(before);
        expect(propertyOf(after).placed).toBe(true);
        for (const [id, line] of before.fenceLine) {
          const wasM = pathLengthM(line.path);
          expect(Math.abs(pathLengthM(after.fenceLine.get(id)!.path) - wasM)).toBeLessThan(1e-5 * wasM);
        }
        for (const [id, { atM }] of before.gateway) {
          expect(Math.abs(after.gateway.get(id)!.atM - atM)).toBeLessThan(0.1);
        }
      }),
      { seed: 22, numRuns: 100 },
    );
  });

  it('lays the named point where it is and turns north by the bearing', () => {
    const property = newProperty('Unplaced');
    const plane = [0, 0] as const;
    const project = put(emptyProject(), property);
    const drawn = addFenceLine({ path: [plane, [0, 0.001]], typeId }, countingIds())(project);
    const earth: LonLat = [-31.5, -42.25];
    const placed = placeOnEarth({ point: { grid: [0, 0], earth }, gridNorthDeg: 90 })(drawn);
    const [start, end] = placed.fenceLine.get('fenceLine-1')!.path;
    expect(distanceM(start!, earth)).toBeLessThan(1e-6);
    expect(end![1]).toBeCloseTo(earth[1], 6);
    expect(end![0]).toBeGreaterThan(earth[0]);
    const second = { grid: [0, 110.574] as const, earth: end! };
    const byTwo = placeOnEarth({ point: { grid: [0, 0], earth }, second })(drawn);
    expect(distanceM(byTwo.fenceLine.get('fenceLine-1')!.path[1]!, end!)).toBeLessThan(1e-3);
  });

  it('refuses a placed property and two points that do not fit', () => {
    const point = { grid: [0, 0] as const, earth: at(0, 0) };
    expect(whyNotPlaceOnEarth({ point, gridNorthDeg: 0 })(emptyProject())?.code).toBe('placed');
    const second = { grid: [100, 0] as const, earth: at(150, 0) };
    const refusal = whyNotPlaceOnEarth({ point, second })(unplaced(emptyProject()));
    expect(refusal?.code).toBe('misfit');
    expect(inEnglish(refusal?.message)).toContain('100 m');
  });
});

describe('edited', () => {
  it('is told nothing by a refused edit', () => {
    const project = emptyProject();
    const wanted = { lineId: 'none', atM: 1 };
    expect(edited(project, [whyNotSplitLine(wanted), splitLine(wanted, countingIds())])).toBe(project);
  });
});
