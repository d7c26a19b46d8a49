import { describe, expect, it } from 'vitest';
import { thingSchema } from '../../../core/api/thingSchemas.ts';
import { leafItems } from '../../../core/drawing/displayList.ts';
import { featuresOf } from '../../../core/exchange/outgoing/featuresOf.ts';
import { phonePage } from '../../../core/exchange/phone/phonePage.ts';
import { allTables } from '../../../core/exchange/tables/allTables.ts';
import { xyDistanceM } from '../../../core/geometry/vector.ts';
import { certaintyInWords } from '../../../core/locate/certaintyWords.ts';
import { crossingAt } from '../../../core/locate/crossingAsBuilt.ts';
import { digCheck } from '../../../core/locate/digCheck.ts';
import { type GroundAnswer, withAnswer } from '../../../core/locate/inGround/answer.ts';
import { groundQuestion } from '../../../core/locate/inGround/question.ts';
import { type TouchOptions, touchedBy } from '../../../core/locate/inGround/touched.ts';
import { stakeOut } from '../../../core/locate/stakeOut.ts';
import { fixedPosts } from '../../../core/locate/tieFrom.ts';
import { difference } from '../../../core/model/difference.ts';
import { changeThing } from '../../../core/model/edits/changeThing.ts';
import { deleteThings } from '../../../core/model/edits/deleteThings.ts';
import { joinLines } from '../../../core/model/edits/joinLines.ts';
import { moveGateway } from '../../../core/model/edits/moveGateway.ts';
import { moveThing } from '../../../core/model/edits/moveThing.ts';
import { moveVertex } from '../../../core/model/edits/moveVertex.ts';
import { setCrossing } from '../../../core/model/edits/setCrossing.ts';
import { setGatewayWidth } from '../../../core/model/edits/setGatewayWidth.ts';
import { splitLine } from '../../../core/model/edits/splitLine.ts';
import type { Edit } from '../../../core/model/edits/support/edit.ts';
import { allThings, type Project, propertyOf, put, remove } from '../../../core/model/project.ts';
import { newBuriedPoint } from '../../../core/model/recordDefaults.ts';
import type { LonLat } from '../../../core/model/things.ts';
import { goBackTo, keepPlan } from '../../../core/quantities/edits/keepPlan.ts';
import { crossingRegister } from '../../../core/record/crossingRegister.ts';
import { markPlanned } from '../../../core/record/edits/markBuilt.ts';
import { recordCrossing } from '../../../core/record/edits/recordCrossing.ts';
import { crossingTable } from '../../../core/sheets/crossingSchedulePages.ts';
import { tapesInWords } from '../../../core/sheets/find/stakeWords.ts';
import { gateTagPages } from '../../../core/sheets/pack/gateTagPages.ts';
import type { PackInput } from '../../../core/sheets/pack/packInput.ts';
import type { PageDraft } from '../../../core/sheets/pageDraft.ts';
import { surveyOf } from '../../../core/survey/survey.ts';
import { figures } from '../../../core/words/figures.ts';
import { qrModules } from '../../../electron/print/qrModules.ts';
import { typefaces } from '../../../electron/print/typefaces.ts';
import { at, line } from '../../support/drawings.ts';
import { inEnglish } from '../../support/english.ts';
import { countingIds } from '../../support/ids.ts';
import { placesInGround, recordedDrawing } from '../../support/recordedDrawing.ts';

const before = recordedDrawing();
const lay = placesInGround(before);

const touch = (edit: Edit, options: TouchOptions = {}, project = before) => {
  const after = edit(project);
  return touchedBy(project, after, difference(project, after), options);
};

const whats = (edit: Edit, options: TouchOptions = {}) => touch(edit, options).asked.map(({ what }) => what);

function answered(edit: Edit, answer: GroundAnswer, project: Project = before): Project {
  const after = edit(project);
  const asked = touchedBy(project, after, difference(project, after));
  return withAnswer({ before: project, after, touch: asked, newId: countingIds(90), date: '2026-11-30' }, answer);
}

const question = (edit: Edit, options: TouchOptions = {}) => {
  const { title, lines, more, ask, choices } = groundQuestion(before, touch(edit, options).asked);
  return {
    title: inEnglish(title),
    lines: lines.map((line) => inEnglish(line)),
    more,
    ask: inEnglish(ask),
    choices: choices.map(({ answer, label, means }) => ({ answer, label: inEnglish(label), means: inEnglish(means) })),
  };
};

/** Degrees: a tenth of a millimetre. */
const sameDeg = 1e-9;

function expectSamePlaces(project: Project, except: readonly string[] = []): void {
  const now = placesInGround(project);
  for (const [id, path] of lay) {
    if (except.includes(id)) continue;
    expect(now.has(id), `${id} is still there`).toBe(true);
    expectSamePath(now.get(id)!, path);
  }
}

function expectSamePath(now: readonly LonLat[], then: readonly LonLat[]): void {
  expect(now.length).toBe(then.length);
  // The feet may have changed hands where a line was turned.
  const straight = now.every((place, i) => isSame(place, then[i]!));
  const turned = now.every((place, i) => isSame(place, then[then.length - 1 - i]!));
  expect(straight || turned).toBe(true);
}

const isSame = (a: LonLat, b: LonLat) => Math.abs(a[0] - b[0]) < sameDeg && Math.abs(a[1] - b[1]) < sameDeg;

const deleteG1 = deleteThings([{ kind: 'gateway', id: 'G1' }]);
const slideG1 = moveGateway({ gatewayId: 'G1', atM: 65 });
const widenG1 = setGatewayWidth({ gatewayId: 'G1', widthM: 5 });

describe('what is in the ground is asked about before', () => {
  it('deleting its gateway, its fence line or itself', () => {
    expect(whats(deleteG1)).toEqual(['crossingGone']);
    expect(whats(setCrossing({ gatewayId: 'G1', to: null }, countingIds()))).toEqual(['crossingGone']);
    const line = whats(deleteThings([{ kind: 'fenceLine', id: 'F1' }]), {});
    expect(line).toEqual(['crossingGone', 'crossingGone', 'crossingGone']);
  });

  it('sliding, widening and bending of the line under it', () => {
    expect(whats(slideG1)).toEqual(['crossingMoved']);
    expect(whats(widenG1)).toEqual(['crossingMoved']);
    const bend = moveVertex({ lineId: 'F1', index: 1, to: at([200, 4]) });
    // G3 was taped from G2's end post, which moves too.
    expect(whats(bend).toSorted()).toEqual(['crossingMoved', 'crossingMoved', 'crossingMoved', 'markMoved']);
  });

  it('making it overhead, or planned again', () => {
    expect(touch(setCrossing({ gatewayId: 'G2', to: { method: 'overhead' } }, countingIds())).asked).toMatchObject([
      { what: 'crossingGone', how: 'overhead' },
    ]);
    expect(touch(markPlanned([{ kind: 'crossing', id: 'X-G2' }])).asked).toMatchObject([
      { what: 'crossingGone', how: 'planned' },
    ]);
  });

  it('going back to a plan that was kept before it was drawn', () => {
    const empty = put(before);
    const without = deleteThings([{ kind: 'fenceLine', id: 'F1' }])(empty);
    const kept = keepPlan('Before', '2025-01-01')(without, countingIds());
    const withPlan = put(before, ...kept.keptPlan.values());
    const id = [...kept.keptPlan.keys()][0]!;
    const after = goBackTo(id)(withPlan);
    const asked = touchedBy(withPlan, after, difference(withPlan, after)).asked;
    expect(asked.map(({ what }) => what)).toEqual(['crossingGone', 'crossingGone', 'crossingGone']);
  });

  it('changing the curve, unless that is what was measured', () => {
    const bow = changeThing({ kind: 'crossing', id: 'X-G2', to: { bowM: 1.5 } });
    expect(whats(bow)).toEqual(['bowChanged']);
    expect(whats(bow, { recording: true })).toEqual([]);
    expect(placesInGround(answered(bow, 'stays')).get('X-G2')).toEqual(lay.get('X-G2'));
  });

  it('moving or removing a buried lead-out or earth stakes', () => {
    expect(whats(moveThing({ kind: 'energiser', id: 'E1', to: at([-6, 10]) }))).toContain('leadOutMoved');
    expect(whats(moveThing({ kind: 'earthField', id: 'EF1', to: at([-9, 12]) }))).toEqual(['earthFieldMoved']);
    expect(whats(deleteThings([{ kind: 'energiser', id: 'E1' }])).toSorted()).toEqual([
      'earthFieldGone',
      'leadOutGone',
    ]);
    expect(whats(changeThing({ kind: 'leadOut', id: 'L1', to: { buried: false } }))).toEqual(['leadOutGone']);
  });

  it('moving or deleting a post that tapes were held to', () => {
    expect(whats(moveThing({ kind: 'post', id: 'P1', to: at([45, 7]) }))).toEqual(['markMoved']);
    expect(whats(deleteThings([{ kind: 'post', id: 'P1' }]))).toEqual(['markGone']);
    expect(whats(moveGateway({ gatewayId: 'G2', atM: 101 })).toSorted()).toEqual(['crossingMoved', 'markMoved']);
  });

  it('losing or replacing what was measured', () => {
    expect(whats(deleteThings([{ kind: 'buriedPoint', id: 'G1 bend' }]))).toEqual(['recordGone']);
    const replaced = put(before, { ...before.buriedPoint.get('G1 bend')!, ties: [] });
    expect(touchedBy(before, replaced, difference(before, replaced)).asked).toMatchObject([{ what: 'recordChanged' }]);
    expect(whats(recordCrossing('X-G1', { soil: 'sand' }), { recording: true })).toEqual([]);
  });

  it('adding to what was measured, unless it is what was measured now', () => {
    const second = { ...newBuriedPoint('second', 'X-G1', 'point', 1), offset: { alongM: 2, leftM: -3 } };
    const adding: Edit = (project) => put(project, second);
    expect(touch(adding).asked).toMatchObject([{ what: 'recordAdded', added: { id: 'second' } }]);
    expect(whats(adding, { recording: true })).toEqual([]);
    expect(question(adding)).toMatchObject({
      title: 'This was measured in the trench',
      lines: ['The point of the crossing under G1 (an offset) is added to what was measured there.'],
    });
    expect(answered(adding, 'stays').buriedPoint.has('second')).toBe(false);
    expect(answered(adding, 'corrected').buriedPoint.has('second')).toBe(true);
    expect(whats((project) => put(project, { ...second, crossingId: 'X-G2' }))).toEqual([]);
  });

  it('giving a recorded crossing to another gateway', () => {
    const other: Edit = (project) =>
      put(remove(project, project.crossing.get('X-G4')!), { ...project.crossing.get('X-G3')!, gatewayId: 'G4' });
    expect(whats(other)).toEqual(['crossingGone']);
  });

  it('leading a lead-out to the same corners in another order, and not a corner put into a straight', () => {
    const leadOut = before.leadOut.get('L1')!;
    const [a, b, c] = leadOut.path as [LonLat, LonLat, LonLat];
    const middle: LonLat = [(b[0] + c[0]) / 2, (b[1] + c[1]) / 2];
    expect(whats((project) => put(project, { ...leadOut, path: [a, c, b] }))).toEqual(['leadOutMoved']);
    expect(whats((project) => put(project, { ...leadOut, path: [a, b, middle, c] }))).toEqual([]);
  });

  it('deleting other built things, where it is they that are deleted', () => {
    const both = deleteThings([{ kind: 'fenceLine', id: 'F1' }]);
    expect(whats(both, { deleting: true }).filter((what) => what === 'builtGone').length).toBe(3);
    expect(whats(both).includes('builtGone')).toBe(false);
  });

  it('but nothing that only stands nearby', () => {
    expect(whats(deleteThings([{ kind: 'gateway', id: 'G4' }]), { deleting: true })).toEqual([]);
    expect(whats(changeThing({ kind: 'gateway', id: 'G1', to: { name: 'Main gate' } }))).toEqual([]);
    expect(whats(splitLine({ lineId: 'F1', atM: 120 }, countingIds(7)))).toEqual([]);
  });
});

describe('whatever is done, what is in the ground stays where it lies, unless it is answered otherwise', () => {
  const edits: Readonly<Record<string, Edit>> = {
    'deleting a gateway': deleteG1,
    'deleting a fence line': deleteThings([{ kind: 'fenceLine', id: 'F1' }]),
    'removing a crossing': setCrossing({ gatewayId: 'G1', to: null }, countingIds()),
    'sliding a gateway': slideG1,
    'widening a gateway': widenG1,
    'bending the line': moveVertex({ lineId: 'F1', index: 1, to: at([200, 40]) }),
    'bending the line by less than is asked about': moveVertex({ lineId: 'F1', index: 1, to: at([200, 0.004]) }),
    'an overhead crossing': setCrossing({ gatewayId: 'G1', to: { method: 'overhead' } }, countingIds()),
    'a crossing planned again': markPlanned([{ kind: 'crossing', id: 'X-G2' }]),
    'moving a post': moveThing({ kind: 'post', id: 'P1', to: at([44, 9]) }),
    'deleting a post': deleteThings([{ kind: 'post', id: 'P1' }]),
    'splitting the line': splitLine({ lineId: 'F1', atM: 120 }, countingIds(7)),
    'moving the energiser': moveThing({ kind: 'energiser', id: 'E1', to: at([-6, 10]) }),
    'deleting the energiser': deleteThings([{ kind: 'energiser', id: 'E1' }]),
    'moving the earth stakes': moveThing({ kind: 'earthField', id: 'EF1', to: at([-9, 12]) }),
    'a lead-out above ground': changeThing({ kind: 'leadOut', id: 'L1', to: { buried: false } }),
    'replacing all records': (project) =>
      put(project, ...[...project.buriedPoint.values()].map((point) => ({ ...point, ties: [] }))),
  };

  it.each(Object.keys(edits))('%s', (name) => {
    for (const answer of ['stays', 'dead'] as const) {
      const after = answered(edits[name]!, answer);
      // With "cut off" a lone post that was moved, and replaced records, have no such answer.
      if (answer === 'dead' && /post|replacing/.test(name)) continue;
      expectSamePlaces(after);
      for (const thing of allThings(after)) expect(thingSchema.safeParse(thing).success).toBe(true);
    }
  });

  it('turning a line round turns none of its records', () => {
    const two = put(
      before,
      line(
        'F2',
        [
          [200, 50],
          [200, 0],
        ],
        { status: 'built' },
      ),
    );
    // F2 first: F1 is laid the other way round behind it.
    const joined = joinLines({ lineId: 'F2', otherId: 'F1' });
    const after = answered(joined, 'stays', two);
    expect([...after.gateway.values()].find(({ id }) => id === 'G1')!.hungFrom).not.toBe(
      two.gateway.get('G1')!.hungFrom,
    );
    expect(touch(joined, {}, two).asked).toEqual([]);
    expectSamePlaces(after);
    const { ties } = after.buriedPoint.get('G1 bend')!;
    expect(ties[0]!.from).toEqual({ on: 'gatePost', gatewayId: 'G1', post: 'end' });
  });

  it('a gate hung from its other post and opened to its other side is not turned round', () => {
    const gateway = before.gateway.get('G1')!;
    const rehung = put(before, {
      ...gateway,
      hungFrom: gateway.hungFrom === 'start' ? 'end' : 'start',
      opens: gateway.opens === 'left' ? 'right' : 'left',
    });
    expect(touch(() => rehung).asked).toEqual([]);
    const after = answered(() => rehung, 'stays');
    expectSamePlaces(after);
    expect(after.buriedPoint).toBe(before.buriedPoint);
  });

  it('a record that comes in changed while its gate shifts by less than is asked about', () => {
    const record = { ...before.crossingRecord.get('record:X-G1')!, soil: 'sand' };
    const edit: Edit = (project) => put(moveGateway({ gatewayId: 'G1', atM: 50.003 })(project), record);
    const after = answered(edit, 'stays');
    expectSamePlaces(after);
    expect(after.crossingRecord.get(record.id)).toMatchObject({ soil: 'clay' });
  });

  it('moved twice, and then deleted', () => {
    const moved = answered(slideG1, 'stays');
    const again = answered(moveGateway({ gatewayId: 'G1', atM: 30 }), 'stays', moved);
    const gone = answered(deleteG1, 'dead', again);
    expectSamePlaces(gone);
    expect([...gone.inGround.values()]).toMatchObject([{ name: 'old crossing under G1', fate: 'dead' }]);
  });
});

describe('the answers', () => {
  it('of a deletion: all that was recorded goes into the record of what is left, photos too', () => {
    const after = answered(deleteG1, 'stays');
    const [kept] = [...after.inGround.values()];
    expect(kept).toMatchObject({
      name: 'old crossing under G1',
      fate: 'inUse',
      since: '2026-11-30',
      was: { what: 'crossing', lineName: 'F1', record: { soil: 'clay' }, mark: { date: '2025-02-11' } },
    });
    expect(kept!.was.what === 'crossing' && kept!.was.points.length).toBe(3);
    expect(after.photo.get('photo-1')!.of).toEqual({ kind: 'inGround', id: kept!.id });
    expect(after.crossingRecord.has('record:X-G1')).toBe(false);
    expect([...after.buriedPoint.values()].some(({ crossingId }) => crossingId === 'X-G1')).toBe(false);
  });

  it('of a move, cut off: the crossing at the new place is planned and not yet measured', () => {
    const after = answered(slideG1, 'dead');
    expect(after.crossing.get('X-G1')).toMatchObject({ status: 'planned', bowM: null, sealed: null });
    expect(after.builtMark.size).toBe(0);
  });

  it('taken out of the ground: the record is kept, and lies nowhere', () => {
    const after = answered(deleteG1, 'takenOut');
    expect([...after.inGround.values()]).toMatchObject([{ fate: 'takenOut' }]);
    expect(placesInGround(after).has('X-G1')).toBe(false);
  });

  it('a mistake: nothing is left of it', () => {
    const after = answered(setCrossing({ gatewayId: 'G1', to: { method: 'overhead' } }, countingIds()), 'mistake');
    expect(after.inGround.size).toBe(0);
    expect(after.crossingRecord.size).toBe(0);
  });

  it('the drawing is put right: what was taped moves along, by just as much', () => {
    const after = answered(slideG1, 'corrected');
    const [was, is] = [lay.get('X-G1')!, placesInGround(after).get('X-G1')!];
    // Only the tape of the bend to P1, which stays, now says otherwise; the feet are 15 m on.
    const shifted = (a: LonLat, b: LonLat) => (b[0] - a[0]) * 111_320 * Math.cos((a[1] * Math.PI) / 180);
    expect(shifted(was[0]!, is[0]!)).toBeCloseTo(15, 1);
    expect(shifted(was.at(-1)!, is.at(-1)!)).toBeCloseTo(15, 1);
    const post = answered(moveThing({ kind: 'post', id: 'P1', to: at([45.3, 6]) }), 'corrected');
    const postAt = post.buriedPoint.get('G1 bend')!.ties[2]!.postAt;
    expect(postAt[0]).toBeCloseTo(at([45.3, 6])[0], 9);
  });

  it('the drawing of a moved gate or post is put right: what lies where it stood before stays there', () => {
    const moved = answered(slideG1, 'stays');
    expectSamePlaces(answered(moveGateway({ gatewayId: 'G1', atM: 65.3 }), 'corrected', moved));
    const post = answered(moveThing({ kind: 'post', id: 'P1', to: at([40, 6]) }), 'stays');
    const right = answered(moveThing({ kind: 'post', id: 'P1', to: at([40.3, 6]) }), 'corrected', post);
    expect(right.buriedPoint.get('G1 bend')).toEqual(before.buriedPoint.get('G1 bend'));
    expectSamePlaces(right);
  });

  it('of the record of something left: kept unless it was taken out or never there', () => {
    const left = answered(deleteG1, 'dead');
    const forget = deleteThings([{ kind: 'inGround', id: [...left.inGround.keys()][0]! }]);
    expect(answered(forget, 'stays', left).inGround.size).toBe(1);
    expect([...answered(forget, 'takenOut', left).inGround.values()][0]!.fate).toBe('takenOut');
    expect(answered(forget, 'mistake', left).inGround.size).toBe(0);
  });
});

describe('the question', () => {
  it('names what is touched and puts the safe answer first', () => {
    expect(question(deleteG1)).toMatchObject({
      title: 'This is in the ground',
      lines: ['The crossing under G1 (built 2025-02-11, 3 points measured, 1 depth, 1 photo) goes from the drawing.'],
      choices: [{ answer: 'stays' }, { answer: 'dead' }, { answer: 'takenOut' }, { answer: 'mistake' }],
    });
    expect(question(slideG1)).toMatchObject({
      lines: [expect.stringContaining('a post of the gate moves 15.00 m')],
      choices: [{ answer: 'stays' }, { answer: 'dead' }, { answer: 'takenOut' }, { answer: 'corrected' }],
    });
    const all = question(deleteThings([{ kind: 'fenceLine', id: 'F1' }]), { deleting: true });
    expect(all.title).toBe('3 of these things are in the ground');
    expect(all.lines).toContain('The gateway G1 is built and goes from the drawing.');
  });

  it('of a post asks whether it was really moved', () => {
    expect(question(moveThing({ kind: 'post', id: 'P1', to: at([45, 7]) }))).toMatchObject({
      lines: ['Post P1 moves 1.00 m. From it was taped: bend of G1.'],
      choices: [{ answer: 'stays' }, { answer: 'corrected' }],
    });
  });
});

describe('a crossing whose gate was moved away', () => {
  const moved = answered(slideG1, 'stays');
  const survey = surveyOf(moved);
  const stake = stakeOut(crossingAt(moved, survey, 'G1')!, fixedPosts(moved, survey));
  const warning = 'The gate’s posts are drawn up to 15.00 m from where they stood when it was dug';

  it('is found from where the posts stood, and from posts that stand now; not from the gate as it is drawn', () => {
    expect([stake.postNames.start, stake.postNames.end].map((name) => inEnglish(name))).toEqual([
      'old hinge post (west)',
      'old latch post (east)',
    ]);
    const bend = stake.points.find(({ label }) => inEnglish(label) === 'bend')!;
    const words = tapesInWords(bend, figures('metric'));
    expect(words).toMatch(/^From the old hinge post \(west\) \(stood 15\.00 m from where it is drawn now\) 2\.33 m, /);
    expect(words).toMatch(/From posts as they are drawn now, worked out: .*the post P1 6\.93 m/);
    for (const { distanceM, post } of bend.tapesNow) {
      expect(xyDistanceM(post, bend.places[0]!.xy)).toBeCloseTo(distanceM, 6);
    }
  });

  it('says so in Find, on its sheet, on the phone page and on the tag', () => {
    expect(inEnglish(certaintyInWords(stake.crossing))).toContain(warning);
    expect(inEnglish(certaintyInWords(crossingAt(before, surveyOf(before), 'G1')!))).not.toContain('stood');
    const measure = (text: string) => text.length;
    expect(phonePage({ project: moved, survey, date: '2026-12-01', measure, photos: [] })).toContain(warning);
    const tag = textOf(tagsOf(moved));
    expect(tag).toContain('Live cable buried near here: 0.35 m deep');
    expect(tag).toContain('The gate was moved: the cable lies where it stood, up to 15.00 m from here.');
    expect(tag).toContain('2.33 m from hinge post of G1 (stood 15.00 m from where it is drawn now)');
    expect(textOf(tagsOf(before))).not.toContain('moved');
  });

  it('has a foot of which nobody said the side told on its tag', () => {
    const foot = before.buriedPoint.get('G1 start')!;
    const open = put(before, { ...foot, side: null, ties: foot.ties.map((tie) => ({ ...tie, distanceM: 2.5 })) });
    expect(textOf(tagsOf(open))).toMatch(
      /West riser foot: on the (north|south) side or the (north|south) side: not said which\./,
    );
  });

  it('fits on its tag, or sends to its card: nothing runs over the edge', () => {
    const foot = (id: string, project: Project) => {
      const point = project.buriedPoint.get(id)!;
      return { ...point, side: null, ties: point.ties.map((tie) => ({ ...tie, distanceM: 2.5 })) };
    };
    const record = {
      ...[...moved.crossingRecord.values()].find(({ crossingId }) => crossingId === 'X-G1')!,
      alsoInTrench: `mains cable in the same conduit ${'w '.repeat(90)}`,
    };
    const bend = { ...moved.buriedPoint.get('G1 bend')!, side: null };
    const much = put(moved, record, bend, foot('G1 start', moved), foot('G1 end', moved));
    const [some, all] = [before, much].map((project) => textOf(tagsOf(project)).split(' G2 ')[0]!);
    expect(some).toContain('Bend: ');
    expect(some).not.toContain('by its card');
    expect(all).not.toContain('Bend: ');
    expect(all).toContain('Other cables lie in this trench.');
    expect(all).toContain('find it by its card in the pack');
    expect(all).toContain('Do not dig.');
    for (const project of [before, moved, much]) {
      const items = tagsOf(project).flatMap((page) => [...leafItems(page.items)]);
      const bottoms = items.flatMap((item) => {
        const ys = item.kind === 'path' && item.paths[0] ? item.paths[0].map(([, y]) => y) : [];
        return ys.length > 0 && Math.max(...ys) - Math.min(...ys) === 60 ? [Math.max(...ys)] : [];
      });
      expect(bottoms).toHaveLength(3);
      for (const item of items) {
        if (item.kind !== 'text') continue;
        const bottom = bottoms.find((each) => each - 60 <= item.at[1] && item.at[1] <= each + 4);
        // The property's name is the foot.
        if (bottom !== undefined && !item.text.includes('(invented example)'))
          expect(item.at[1], item.text).toBeLessThan(bottom - 7);
      }
    }
  });
});

/** The gate tags of a drawing. */
function tagsOf(project: Project) {
  const survey = surveyOf(project);
  const input = {
    project,
    survey,
    property: propertyOf(project),
    date: '2026-12-01',
    measure: typefaces().measure,
    f: figures('metric'),
    crossings: crossingRegister(project, survey),
    makeQr: qrModules,
  };
  return gateTagPages(input as unknown as PackInput);
}

function textOf(pages: readonly PageDraft[]): string {
  const texts = pages
    .flatMap(({ items }) => [...leafItems(items)])
    .flatMap((item) => (item.kind === 'text' ? [item.text] : []));
  return texts.join(' ').replaceAll('\u00a0', ' ');
}

describe('the lengths of a crossing whose gate was widened', () => {
  const widened = answered(widenG1, 'stays');
  const [then, now] = [before, widened].map((project) => ({ project, survey: surveyOf(project) }));

  it('are of the opening under which it was dug, in the schedule, the tables and the map files', () => {
    const schedule = [then!, now!].map(({ project, survey }) => {
      const { columns, rows } = crossingTable(project, survey, figures('metric'), false);
      const row = rows.find(([name]) => name === 'G1')!;
      return Object.fromEntries(columns.map(({ title }, i) => [title, row[i]]));
    });
    expect(schedule[1]).toEqual({
      ...schedule[0],
      Opening: '5.00',
      Remarks: 'Lies where the gate’s posts stood when it was dug; its lengths are of that opening.',
    });
    const pipes = [then!, now!].map(({ project, survey }) => {
      const { columns, rows } = allTables(project, survey).find(({ name }) => name === 'crossings')!;
      const feature = [...featuresOf(project, survey)].find(({ id }) => id === 'crossing:X-G1')!;
      const cell = rows.find(({ id }) => id === 'X-G1')!.cells[columns.findIndex(({ name }) => name === 'pipe_m')];
      return [cell, feature.properties!.pipeM] as [number, number];
    });
    expect(pipes[1]![0]).toBeCloseTo(pipes[0]![0], 3);
    expect(pipes[1]![1]).toBeCloseTo(pipes[0]![1], 5);
  });
});

describe('the dig check afterwards', () => {
  const spot = lay.get('X-G1')!.at(10)!;
  const digAt = (project: Project, place = spot) =>
    digCheck(project, surveyOf(project), { shape: 'point', path: [place], errorM: 0.1, withinM: 3 });
  const met = (project: Project, place = spot) =>
    digAt(project, place)
      .findings.filter(({ overlap }) => overlap)
      .map(({ thing }) => inEnglish(thing.name));

  it('finds the crossing before anything is done', () => {
    expect(met(before)).toEqual(['crossing under G1']);
  });

  it.each([
    ['deleted', deleteG1, 'old crossing under G1 (may be live)'],
    ['removed', setCrossing({ gatewayId: 'G1', to: null }, countingIds()), 'old crossing under G1 (may be live)'],
    ['its gate slid by 15 m', slideG1, 'crossing under G1'],
    ['its gate moved as far as the fence goes', moveGateway({ gatewayId: 'G1', atM: 130 }), 'crossing under G1'],
    ['widened', widenG1, 'crossing under G1'],
    [
      'made overhead',
      setCrossing({ gatewayId: 'G1', to: { method: 'overhead' } }, countingIds()),
      'old crossing under G1 (may be live)',
    ],
  ])('still finds it when it was %s', (_how, edit, name) => {
    expect(met(answered(edit, 'stays'))).toEqual([name]);
  });

  it('says of what is dead that it is, and nothing of what was taken out or never there', () => {
    expect(met(answered(deleteG1, 'dead'))).toEqual(['old crossing under G1 (dead, left in the ground)']);
    expect(met(answered(deleteG1, 'takenOut'))).toEqual([]);
    expect(met(answered(deleteG1, 'mistake'))).toEqual([]);
  });

  it('finds both where a new one was dug beside the old one', () => {
    const left = answered(slideG1, 'dead');
    const back = moveGateway({ gatewayId: 'G1', atM: 50 })(left);
    const again = put(back, { ...back.crossing.get('X-G1')!, status: 'built' });
    expect(met(again).toSorted()).toEqual(['crossing under G1', 'old crossing under G1 (dead, left in the ground)']);
  });

  it('finds lead-outs and earth stakes that were left', () => {
    const gone = answered(deleteThings([{ kind: 'energiser', id: 'E1' }]), 'dead');
    expect(met(gone, at([-5, 5]))).toContain('old lead-out L1 (dead, left in the ground)');
    expect(met(gone, at([-8, 12]))).toContain('old earth stakes of E1 (left in the ground)');
  });

  it('warns of measured points that an earlier version left behind without their crossing', () => {
    const orphaned = remove(before, before.crossing.get('X-G1')!);
    expect(met(orphaned)[0]).toMatch(/^measured point of a crossing that is drawn no longer, taped from/);
    // Its gateway is in no line, or has another crossing: from a file that was spoilt.
    const loose = put(before, { ...before.gateway.get('G1')!, lineId: 'gone' });
    const points = [...before.buriedPoint.values()].map((point) => ({ ...point, crossingId: 'X-other' }));
    const second = put(before, { ...before.crossing.get('X-G2')!, id: 'X-other', gatewayId: 'G1' }, ...points);
    for (const spoilt of [loose, second]) expect(met(spoilt).join()).toMatch(/measured point of a crossing/);
    const above = put(before, { ...before.crossing.get('X-G1')!, method: 'overhead' });
    expect(met(above)[0]).toMatch(/^measured point of a crossing that is drawn no longer, taped from/);
  });
});
