import { expect, it } from 'vitest';
import { fieldsOf } from '../../../core/kinds/allKinds.ts';
import { choicesOf } from '../../../core/kinds/describe.ts';
import { choiceCalled } from '../../../core/kinds/words.ts';
import { newEarthField } from '../../../core/model/defaults.ts';
import { type Project, put } from '../../../core/model/project.ts';
import { newBuriedPoint, newCrossingRecord } from '../../../core/model/recordDefaults.ts';
import type { Photo } from '../../../core/model/recordThings.ts';
import { changeSinceInWords, changesSince } from '../../../core/record/changesSince.ts';
import { crossingRegister, recordSentence } from '../../../core/record/crossingRegister.ts';
import { differencesFromPlan } from '../../../core/record/differences.ts';
import { handOver } from '../../../core/record/edits/handOver.ts';
import { markBuilt } from '../../../core/record/edits/markBuilt.ts';
import { nameOf } from '../../../core/record/places.ts';
import { surveyOf } from '../../../core/survey/survey.ts';
import { figures } from '../../../core/words/figures.ts';
import { textsWith } from '../../../core/words/message.ts';
import { pseudo } from '../../../core/words/pseudo.ts';
import { at, bridgedGateway, drawing, energiser, gateSwitch, line, strainer } from '../../support/drawings.ts';
import { englishIn, expectFromCatalogue, inPseudo, namesIn } from '../../support/pseudo.ts';

const fence = line('F1', [
  [0, 0],
  [200, 0],
]);
const [gateway, crossing] = bridgedGateway('G1', 'F1', 50);
const [second, ambiguous] = bridgedGateway('G2', 'F1', 120);
const stakes = newEarthField('ef', 'E1', at([0, 0]));
const plain = drawing(
  fence,
  gateway,
  crossing,
  second,
  ambiguous,
  gateSwitch('S1', 'G1', 'start'),
  strainer('P1', [45, 5]),
  energiser('E1', [0, 0]),
  stakes,
);
const refs = [
  { kind: 'gateway' as const, id: 'G1' },
  { kind: 'crossing' as const, id: 'X-G1' },
  { kind: 'earthField' as const, id: 'ef' },
];
const built = markBuilt(refs, { date: '2031-05-02', by: 'crew' }, surveyOf(plain))(plain);

/** Something of every kind of change that the record tells of. */
function changed(project: Project): Project {
  const photo = { kind: 'photo', id: 'ph', of: null, caption: '', fileName: 'a.jpg', blobId: 'b' } as unknown as Photo;
  const now = put(
    project,
    { ...project.gateway.get('G1')!, atM: 60, widthM: 5, vehicles: false, note: 'moved' },
    { ...project.crossing.get('X-G1')!, cableId: '', pipeBoreMm: 25, sealed: true },
    { ...project.switch.get('S1')!, normally: 'open' },
    { ...project.energiser.get('E1')!, openCircuitV: 9000, into500OhmV: 4000 },
    { ...newCrossingRecord('X-G1'), soil: 'clay', risers: { start: 'a', end: 'b' } },
    { ...newBuriedPoint('b', 'X-G1', 'bend'), offset: { alongM: 2, leftM: 1 } },
    photo,
    { ...photo, id: 'ph2', caption: 'trench' },
    { ...newEarthField('ef2', 'gone', at([0, 0])) },
  );
  return { ...now, post: new Map() };
}

it('what has changed since a handover, and differs from the plan, comes from the catalogue whole', () => {
  const handed = handOver({ date: '2031-05-02', by: '', to: '', note: '' }, () => 'h1')(built);
  const now = changed(handed);
  const survey = surveyOf(now);
  const names = namesIn(now);
  const said = changesSince(handed.handover.get('h1')!, now, survey).map(changeSinceInWords);
  expect(said.length).toBeGreaterThan(8);
  for (const message of said) expectFromCatalogue(message, names);
  const differences = differencesFromPlan(now, survey);
  expect(differences.length).toBeGreaterThan(1);
  for (const { name, changes } of differences) {
    expectFromCatalogue(name, names);
    for (const { field, before, after } of changes)
      for (const one of [field, before, after]) expectFromCatalogue(one, names);
  }
  for (const field of now.earthField.values()) expectFromCatalogue(nameOf(field, now), names);
});

it('a choice is told by its word of the catalogue', () => {
  const [choice] = choicesOf(fieldsOf('switch').normally!);
  expect(englishIn(inPseudo(choiceCalled('switch', 'normally', choice!)))).toBe('');
});

it('how far the record is, and what a crossing lacks, comes from the catalogue whole', () => {
  const tie = (post: 'start' | 'end', distanceM: number) => ({
    from: { on: 'gatePost', gatewayId: 'G2', post } as const,
    postName: '',
    postAt: surveyOf(plain).gateways.get('G2')![post === 'start' ? 'startPostAt' : 'endPostAt'],
    distanceM,
    seM: 0.02,
  });
  for (const distanceM of [2.5, 1]) {
    const bend = { ...newBuriedPoint('b2', 'X-G2', 'bend'), ties: [tie('start', distanceM), tie('end', distanceM)] };
    const project = put(built, bend);
    const rows = crossingRegister(project, surveyOf(project));
    const names = namesIn(project);
    expectFromCatalogue(recordSentence(rows, 2), names);
    for (const { lacks } of rows) for (const message of lacks) expectFromCatalogue(message, names);
  }
  expectFromCatalogue(recordSentence([], 0), new Set());
});

it('every text of the Record workspace is one text of the catalogue', () => {
  const f = figures('metric', pseudo());
  expect(f.words).toEqual(expect.anything());
  const { record } = textsWith(pseudo().words, f).window;
  expect(englishIn(record.handover.particulars({ by: 'x', to: '', note: '' }))).toBe('');
  expect(englishIn(record.crossing.edits.texts.soil({ gateway: 'G1' }))).toBe('');
  expect(englishIn(record.point.edits.side({ where: 'x' }))).toBe('');
});
