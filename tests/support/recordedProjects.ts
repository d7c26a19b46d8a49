import fc from 'fast-check';
import { withAnswer } from '../../core/locate/inGround/answer.ts';
import { touchedBy } from '../../core/locate/inGround/touched.ts';
import { fixedPosts } from '../../core/locate/tieFrom.ts';
import { difference } from '../../core/model/difference.ts';
import { addCandidatePlace } from '../../core/model/edits/addCandidatePlace.ts';
import { type AddThing, addThing } from '../../core/model/edits/addThing.ts';
import { changeThing } from '../../core/model/edits/changeThing.ts';
import { deleteThings } from '../../core/model/edits/deleteThings.ts';
import { layUnderlay } from '../../core/model/edits/layUnderlay.ts';
import { placeEarthField } from '../../core/model/edits/placeEarthField.ts';
import { setCoordinateSystem } from '../../core/model/edits/setCoordinateSystem.ts';
import { setPlainWire } from '../../core/model/edits/setPlainWire.ts';
import { setRule } from '../../core/model/edits/setRule.ts';
import { type Edit, EditRefused } from '../../core/model/edits/support/edit.ts';
import { pathIn } from '../../core/model/edits/support/path.ts';
import type { FaultSearch } from '../../core/model/faultSearchThings.ts';
import { kinds, type Project, propertyOf, put } from '../../core/model/project.ts';
import { buildableKinds } from '../../core/model/recordDefaults.ts';
import type { TapeTie } from '../../core/model/recordThings.ts';
import { serviceKinds } from '../../core/model/serviceKinds.ts';
import type { Kind } from '../../core/model/things.ts';
import type { PictureSource, Placement } from '../../core/model/underlayThings.ts';
import { changeItem, setLabourRate } from '../../core/quantities/edits/changePrices.ts';
import { addStage, putInStage } from '../../core/quantities/edits/changeStages.ts';
import { changeTerms, setDroppers } from '../../core/quantities/edits/changeTerms.ts';
import { keepPlan } from '../../core/quantities/edits/keepPlan.ts';
import { priceListOf } from '../../core/quantities/order/priceList.ts';
import { handOver } from '../../core/record/edits/handOver.ts';
import { markBuilt } from '../../core/record/edits/markBuilt.ts';
import { recordCrossing } from '../../core/record/edits/recordCrossing.ts';
import { recordPoint } from '../../core/record/edits/recordPoint.ts';
import { switchCandidates } from '../../core/survey/candidates.ts';
import { surveyOf } from '../../core/survey/survey.ts';
import { inEnglish } from './english.ts';
import { countingIds } from './ids.ts';
import { randomNumbers } from './random.ts';
import { at, emptyProject, randomProject } from './randomProjects.ts';

/** A date of an invented year. */
const day = '2031-05-02';

const picture: PictureSource = { from: 'picture', imageId: 'image-1', fileName: 'a.jpg', widthPx: 1100, heightPx: 600 };
const byEye = { by: 'eye', at: at(40, 40), metresPerPixel: 0.5, upDeg: 10 } as const;
const placements: readonly Placement[] = [
  byEye,
  { by: 'distance', from: [0, 0], to: [900, 30], distanceM: 450, at: at(-80, 15), bearingDeg: 92 },
  {
    by: 'points',
    fit: 'similarity',
    points: [
      { pixel: [10, 10], at: at(-200, 100) },
      { pixel: [1000, 500], at: at(300, -140) },
    ],
    before: byEye,
  },
  { by: 'coordinates', system: 'Degrees', columns: 2, rows: 2, at: [at(0, 90), at(90, 90), at(0, 0), at(90, 0)] },
];

/** The drawing with records of every kind: a file as it is after some years. `seed` says which and how many. */
export function withEveryRecord(bare: Project, seed: number): Project {
  const next = randomNumbers(seed);
  const pick = <T>(all: readonly T[]): T | undefined => all[Math.floor(next() * all.length)];
  const some = <T>(all: Iterable<T>): T[] => [...all].filter(() => next() < 0.6);
  const newId = countingIds(100);
  let project = bare;
  const make = (edit: Edit) => {
    try {
      project = edit(project);
    } catch (error) {
      if (!(error instanceof EditRefused)) throw error;
    }
  };
  const add = (wanted: AddThing) => make(addThing(wanted, newId));

  make((now) => keepPlan('At first', day)(now, newId));
  add({ kind: 'conductor', name: 'Own wire', ohmPerKm: 40, note: '' });
  add({ kind: 'fenceType', ...typeOf(project), name: 'Of own wire', wireId: 'conductor-101' });
  if (next() < 0.5) make(setPlainWire({ typeId: 'ft-4', wireId: 'conductor-101' }));
  if (next() < 0.3) make(changeThing({ kind: 'property', id: 'property', to: { units: 'imperial' } }));
  for (const what of some(serviceKinds)) {
    const [x, y] = [next() * 400, next() * 400];
    const path = what === 'earthElectrode' ? [at(x, y)] : [at(x, y), at(x + 90, y + 40), at(x + 120, y - 60)];
    add({ kind: 'service', name: what, what, path, voltageV: null, buried: next() < 0.5, open: null, note: '' });
  }
  for (const { id } of some(project.energiser.values())) make(placeEarthField({ energiserId: id }, newId));
  for (const { id } of project.earthField.values()) {
    const words = { by: 'somebody', meter: '', weather: '', load: 'a wire', note: '' };
    add({ kind: 'earthTest', earthFieldId: id, date: day, earthV: 250, fenceV: 900, ...words });
  }
  for (const { id: lineId, path } of some(project.fenceLine.values())) {
    make(addCandidatePlace({ lineId, atM: next() * pathIn(project, path).lengthM, cost: null }, newId));
  }
  for (const [i, { key }] of switchCandidates(project, surveyOf(project)).entries()) {
    if (i < 40) make(setRule({ key, rule: pick([null, 'forced', 'forbidden'] as const)! }));
  }

  const survey = surveyOf(project);
  const posts = fixedPosts(project, survey);
  for (const { id: crossingId, gatewayId } of some(project.crossing.values())) {
    const shape = survey.gateways.get(gatewayId);
    if (!shape) continue;
    const depths = [{ alongM: 1, depthM: 0.2 + next() }];
    make(recordCrossing(crossingId, { depths, soil: 'clay', recordedOn: day, route: pick(['arc', 'points'])! }));
    const roles = some(['startFoot', 'bend', 'endFoot', 'point'] as const);
    for (const [rank, role] of roles.entries()) {
      const own = posts.filter(({ from }) => from.on === 'gatePost' && from.gatewayId === gatewayId);
      const ties = [...own, pick(posts)!]
        .slice(0, Math.floor(next() * 4))
        .map(({ from, name, at: postAt }): TapeTie => {
          return { from, postName: inEnglish(name), postAt, distanceM: 1 + next() * 5, seM: 0.02 };
        });
      const to = { ties, side: pick(['left', 'right', null] as const)!, offset: { alongM: next() * 4, leftM: next() } };
      make(recordPoint({ id: newId('buriedPoint'), crossingId, role, rank, to }));
    }
  }
  for (const kind of buildableKinds) {
    const refs = some([...project[kind].keys()]).map((id) => ({ kind, id }));
    make(markBuilt(refs, { date: day, by: 'the crew' }, surveyOf(project)));
  }
  const shown: readonly Kind[] = ['gateway', 'crossing', 'fenceLine', 'post', 'energiser', 'switch'];
  for (const of of [null, ...some(shown.flatMap((kind) => [...project[kind].values()].slice(0, 2)))]) {
    const picture = {
      widthPx: 4,
      heightPx: 3,
      takenAt: `${day}T09:30:00`,
      gps: at(3, 4),
      fileName: 'a.jpg',
      caption: '',
    };
    add({ kind: 'photo', of: of && { kind: of.kind, id: of.id }, blobId: 'b', thumbId: 't', ...picture });
  }

  const switchIds = [...project.switch.keys()];
  const outcomes = [{ section: 'A', outcome: 'passed', note: '' } as const];
  const words = { by: 'somebody', meter: '', weather: '', note: '' };
  add({ kind: 'testRun', name: 'Spring', date: day, results: outcomes, finished: false, ...words });
  for (const runId of ['testRun-101', null]) {
    const measured = {
      at: at(next() * 300, 5),
      date: day,
      voltageV: 5200,
      currentA: null,
      openSwitchIds: some(switchIds),
    };
    add({ kind: 'reading', ...measured, ...(runId && project.testRun.has(runId) ? { runId } : {}), note: '' });
  }
  const energiserId = pick([...project.energiser.keys()]);
  if (energiserId) add(faultSearchOf(energiserId, switchIds));
  const ways = [{ path: [at(0, 0), at(50, 0)], heightsM: [10, 12] }];
  add({ kind: 'ground', name: 'Track', fileName: 't.gpx', heights: { as: 'along', ways, byReceiver: true }, note: '' });
  add({ kind: 'paddock', name: 'Top', at: at(next() * 500, next() * 500), note: '' });
  add({ kind: 'rollOnHand', measure: 'pipe:19', lengthM: 38.5, count: 2, note: '' });

  for (const [i, placement] of some(placements).entries()) {
    make(
      layUnderlay({
        id: `underlay-${i}`,
        name: 'Photo',
        source: picture,
        placement,
        opacity: 0.7,
        shown: true,
        note: '',
      }),
    );
  }
  make(setCoordinateSystem({ system: 'degrees', own: null }));
  make(changeTerms({ currency: 'NZD', taxPercent: 15 }));
  make(setDroppers('ft-2', 2));
  make(setLabourRate('gateway', 40));
  make(changeItem([...priceListOf(project).items.keys()][0]!, { price: 12 }));
  for (const name of ['This spring', 'Later']) make((now) => addStage(name)(now, newId));
  const staged = some(buildableKinds.flatMap((kind) => [...project[kind].keys()]));
  make(putInStage(staged, pick([...project.stage.keys()])!));
  make((now) => keepPlan('As drawn', day)(now, newId));

  const leaving = pick([...project.gateway.values(), ...project.leadOut.values(), ...project.earthField.values()]);
  if (leaving && next() < 0.5) {
    const after = deleteThings([leaving])(project);
    const touch = touchedBy(project, after, difference(project, after));
    const answer = pick(['stays', 'dead', 'takenOut'] as const)!;
    project = withAnswer({ before: project, after, touch, newId, date: day }, answer);
  }
  make(handOver({ date: day, by: 'the crew', to: 'the owner', note: '' }, newId));
  return project;
}

function typeOf(project: Project) {
  const { id: _, kind: __, ...type } = project.fenceType.get('ft-2')!;
  return type;
}

function faultSearchOf(energiserId: string, switchIds: readonly string[]): Omit<FaultSearch, 'id'> {
  const taken = switchIds.slice(0, 1).map((id) => ({
    check: 'test' as const,
    switchId: id,
    switchName: id,
    openIds: [id],
    voltageV: 2100,
    result: 'low' as const,
    doubtful: false,
    at: `${day}T09:10`,
    setAside: false,
  }));
  return {
    kind: 'faultHunt',
    name: 'Search',
    startedAt: `${day}T09:00`,
    by: 'somebody',
    energiserId,
    saves: 'tests',
    lowBelowV: 3000,
    goodFromV: 4000,
    openedFirst: [],
    readings: taken,
    end: null,
    note: '',
  };
}

/** A property on the blank grid on which nothing lies but a picture, laid by eye. */
function bareWithPicture(): Project {
  const empty = unplaced(emptyProject());
  const laid = {
    id: 'underlay-0',
    name: 'Photo',
    source: picture,
    placement: byEye,
    opacity: 1,
    shown: true,
    note: '',
  };
  return layUnderlay(laid)(empty);
}

/** The same drawing on the blank grid, with no place on earth yet. */
function unplaced(project: Project): Project {
  return put(project, { ...propertyOf(project), placed: false });
}

const recorded: fc.Arbitrary<Project> = fc.oneof(
  { weight: 1, arbitrary: fc.constant(bareWithPicture()) },
  {
    weight: 19,
    arbitrary: fc.tuple(randomProject, fc.nat(0xffffffff), fc.integer({ min: 0, max: 4 })).map(([bare, seed, n]) => {
      return withEveryRecord(n === 0 ? unplaced(bare) : bare, seed);
    }),
  },
);

/** Drawings with records of every kind, made once; some on the blank grid, a few with nothing but a picture. */
export const recordedProjects: readonly Project[] = fc.sample(recorded, { seed: 5, numRuns: 80 });

/** Kinds of which a project has something. */
export function kindsIn(project: Project): Kind[] {
  return kinds.filter((kind) => project[kind].size > 0);
}
