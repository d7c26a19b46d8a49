import fc from 'fast-check';
import { ended, setAside } from '../../core/locate/faultSearch/faultSearchEdits.ts';
import { keepFaultSearch } from '../../core/locate/faultSearch/keepFaultSearch.ts';
import { acceptPlan } from '../../core/model/edits/acceptPlan.ts';
import { addCandidatePlace } from '../../core/model/edits/addCandidatePlace.ts';
import { addFenceLine } from '../../core/model/edits/addFenceLine.ts';
import { addThing } from '../../core/model/edits/addThing.ts';
import { changeThing } from '../../core/model/edits/changeThing.ts';
import { deleteThings } from '../../core/model/edits/deleteThings.ts';
import { deleteVertex } from '../../core/model/edits/deleteVertex.ts';
import { drawLeadOut } from '../../core/model/edits/drawLeadOut.ts';
import { fixCrossing } from '../../core/model/edits/fixCrossing.ts';
import { fixSelfCrossing } from '../../core/model/edits/fixSelfCrossing.ts';
import { insertVertex } from '../../core/model/edits/insertVertex.ts';
import { joinGap } from '../../core/model/edits/joinGap.ts';
import { joinLines } from '../../core/model/edits/joinLines.ts';
import { layUnderlay } from '../../core/model/edits/layUnderlay.ts';
import { moveGateway } from '../../core/model/edits/moveGateway.ts';
import { movePathVertex } from '../../core/model/edits/movePathVertex.ts';
import { moveSwitch } from '../../core/model/edits/moveSwitch.ts';
import { moveThing } from '../../core/model/edits/moveThing.ts';
import { moveUnderlay } from '../../core/model/edits/moveUnderlay.ts';
import { moveVertex } from '../../core/model/edits/moveVertex.ts';
import { nameNewPaddocks } from '../../core/model/edits/nameNewPaddocks.ts';
import { placeByPicture } from '../../core/model/edits/placeByPicture.ts';
import { placeEarthField } from '../../core/model/edits/placeEarthField.ts';
import { placeEnergiser } from '../../core/model/edits/placeEnergiser.ts';
import { placeGateway } from '../../core/model/edits/placeGateway.ts';
import { placeOnEarth } from '../../core/model/edits/placeOnEarth.ts';
import { placePost } from '../../core/model/edits/placePost.ts';
import { placeSwitch } from '../../core/model/edits/placeSwitch.ts';
import { setCoordinateSystem } from '../../core/model/edits/setCoordinateSystem.ts';
import { setCrossing } from '../../core/model/edits/setCrossing.ts';
import { setGatewayWidth } from '../../core/model/edits/setGatewayWidth.ts';
import { setGrowth } from '../../core/model/edits/setGrowth.ts';
import { setPlainWire } from '../../core/model/edits/setPlainWire.ts';
import { setRule } from '../../core/model/edits/setRule.ts';
import { splitLine } from '../../core/model/edits/splitLine.ts';
import { type Edit, EditRefused, type NewId, type Refusal } from '../../core/model/edits/support/edit.ts';
import { pathIn } from '../../core/model/edits/support/path.ts';
import { allThings, type Project } from '../../core/model/project.ts';
import { buildableKinds } from '../../core/model/recordDefaults.ts';
import type { LineEnd, LonLat, SwitchPlace, Thing } from '../../core/model/things.ts';
import {
  addItem,
  addItemFor,
  addKit,
  changeItem,
  changeKit,
  deleteItem,
  deleteKit,
  setLabourRate,
} from '../../core/quantities/edits/changePrices.ts';
import { addStage, deleteStage, moveStage, putInStage } from '../../core/quantities/edits/changeStages.ts';
import { changeTerms, setDroppers } from '../../core/quantities/edits/changeTerms.ts';
import { deleteKeptPlan, goBackTo, keepPlan } from '../../core/quantities/edits/keepPlan.ts';
import { priceListOf } from '../../core/quantities/order/priceList.ts';
import { handOver } from '../../core/record/edits/handOver.ts';
import { markBuilt, markPlanned } from '../../core/record/edits/markBuilt.ts';
import { recordCrossing } from '../../core/record/edits/recordCrossing.ts';
import { recordPoint } from '../../core/record/edits/recordPoint.ts';
import { trackAsTrench } from '../../core/record/edits/trackAsTrench.ts';
import { measured } from '../../core/shapes/measuredPath.ts';
import { switchCandidates } from '../../core/survey/candidates.ts';
import { surveyOf } from '../../core/survey/survey.ts';
import { message } from '../../core/words/message.ts';
import { countingIds } from './ids.ts';
import { at, testPlane } from './randomProjects.ts';

/** What an edit is thrown with. */
export interface Dice {
  readonly n: number;
  readonly m: number;
  readonly share: number;
  readonly x: number;
  readonly y: number;
  readonly end: LineEnd;
}

export const dice: fc.Arbitrary<Dice> = fc.record({
  n: fc.nat(50),
  m: fc.nat(50),
  share: fc.integer({ min: 0, max: 1000 }).map((n) => n / 1000),
  x: fc.integer({ min: -3000, max: 3000 }),
  y: fc.integer({ min: -3000, max: 3000 }),
  end: fc.constantFrom('start', 'end'),
});

/** Why an edit refuses a project, or null where it can be made. */
export function refusalOf(edit: Edit, project: Project): Refusal | null {
  try {
    edit(project);
    return null;
  } catch (error) {
    if (error instanceof EditRefused) return error.refusal;
    throw error;
  }
}

const newId: NewId = countingIds(500);
const day = '2031-05-04';
const pick = <T>(all: Iterable<T>, n: number): T | undefined => {
  const list = [...all];
  return list[n % Math.max(1, list.length)];
};

/** Every edit, by its name, with parameters thrown by dice; null where the project has nothing to try it on. */
export const attempts: Readonly<Record<string, (project: Project, dice: Dice) => Edit | null>> = {
  insertVertex: onLine((lineId, path, { m, x, y }) =>
    insertVertex({ lineId, segment: m % (path.length - 1), at: at(x, y) }),
  ),
  moveVertex: onLine((lineId, path, { m, x, y }) =>
    moveVertex({ lineId, index: m % path.length, to: at(x, y), alone: x > 0 }),
  ),
  deleteVertex: onLine((lineId, path, { m }) => deleteVertex({ lineId, index: m % path.length })),
  splitLine: onLine((lineId, path, { share, m }) => {
    const { stationsM } = measured(testPlane, path);
    const atM = share < 0.3 ? stationsM[m % stationsM.length]! : share * stationsM.at(-1)!;
    return splitLine({ lineId, atM }, newId);
  }),
  joinLines: onTwoLines((lineId, otherId) => joinLines({ lineId, otherId })),
  fixCrossing: onTwoLines((lineId, otherId, { x, y }) => fixCrossing({ lineId, otherId, near: at(x, y) })),
  fixSelfCrossing: onLine((lineId) => fixSelfCrossing({ lineId })),
  joinGap: (project, { n, m, end }) => {
    const ids = [...project.fenceLine.keys()];
    const all = ids.flatMap((lineId) => ids.map((toLineId) => joinGap({ lineId, end, toLineId })));
    // Few pairs are so near, so one that is goes first.
    return (
      (m % 2 === 0 ? all.slice(0, 16).find((edit) => refusalOf(edit, project) === null) : undefined) ??
      pick(all, n) ??
      null
    );
  },
  addFenceLine: (project, { x, y, n, end }) => {
    const start = end === 'start' ? pick(project.fenceLine.values(), n)?.path[0] : undefined;
    return addFenceLine({ path: [start ?? at(y, x), at(x, y)], typeId: 'ft-2' }, newId);
  },
  placeGateway: onLine((lineId, path, { share, m }) => {
    return placeGateway({ lineId, atM: share * measured(testPlane, path).lengthM, widthM: 2 + (m % 8) }, newId);
  }),
  moveGateway: onGateway((gatewayId, project, { n, share }) => {
    const line = pick(project.fenceLine.values(), n)!;
    return moveGateway({ gatewayId, lineId: line.id, atM: share * pathIn(project, line.path).lengthM });
  }),
  setGatewayWidth: onGateway((gatewayId, _, { share, end }) =>
    setGatewayWidth({ gatewayId, widthM: 1 + 9 * share, keep: end }),
  ),
  setCrossing: onGateway((gatewayId, _, { share, n }) => {
    return setCrossing({ gatewayId, to: n % 4 === 0 ? null : { bowM: share, earth: n % 2 === 0 } }, newId);
  }),
  placeSwitch: (project, thrown) => placeSwitch({ place: placeOf(project, thrown) }, newId),
  moveSwitch: (project, thrown) => {
    const cutOut = pick(project.switch.values(), thrown.n);
    return cutOut ? moveSwitch({ switchId: cutOut.id, place: placeOf(project, thrown) }) : null;
  },
  acceptPlan: (project, { n, share }) => {
    const surplus = [...project.switch.keys()].filter((_, i) => (i + n) % 2 === 0);
    const missing = [...project.gateway.keys()].map((gatewayId) => {
      return { place: { on: 'gateway', gatewayId, post: share < 0.5 ? 'start' : 'end' } } as const;
    });
    return acceptPlan({ missing, surplus }, newId);
  },
  addCandidatePlace: onLine((lineId, path, { share }) =>
    addCandidatePlace({ lineId, atM: share * measured(testPlane, path).lengthM, cost: null }, newId),
  ),
  setRule: (project, { n, m }) => {
    const key = pick(switchCandidates(project, surveyOf(project)), n)?.key;
    return key === undefined ? null : setRule({ key, rule: ([null, 'forced', 'forbidden'] as const)[m % 3]! });
  },
  deleteThings: (project, { n }) => {
    const things = [...allThings(project)].filter(({ kind }) => kind !== 'property' && kind !== 'fenceType');
    const from = n % Math.max(1, things.length);
    return things.length === 0 ? null : deleteThings(things.slice(from, from + 2));
  },
  changeThing: (project, { n, m }) => {
    const thing = pick(
      [...allThings(project)].filter((each) => each.kind === 'fenceLine' || 'note' in each),
      m,
    )!;
    if (thing.kind !== 'fenceLine') return changeThing({ kind: thing.kind, id: thing.id, to: { note: `note ${n}` } });
    return changeThing({ kind: 'fenceLine', id: thing.id, to: { live: n % 2 === 0, note: `note ${n}` } });
  },
  moveThing: (project, { x, y, n }) => {
    const thing = pick(
      (['post', 'energiser', 'earthField', 'paddock', 'reading'] as const).flatMap((kind) => [
        ...(project[kind].values() as Iterable<Thing & { kind: typeof kind }>),
      ]),
      n,
    );
    return thing ? moveThing({ kind: thing.kind, id: thing.id, to: at(x, y) }) : null;
  },
  movePathVertex: (project, { n, m, x, y }) => {
    const thing = pick([...project.leadOut.values(), ...project.service.values()], n);
    return thing
      ? movePathVertex({ kind: thing.kind, id: thing.id, index: m % thing.path.length, to: at(x, y) })
      : null;
  },
  nameNewPaddocks: (_, { x, y }) => nameNewPaddocks([at(x, y), at(y, x)], newId),
  placePost: (_, { x, y }) => placePost({ at: at(x, y) }, newId),
  placeEnergiser: (_, { x, y }) => placeEnergiser({ at: at(x, y) }, newId),
  placeEarthField: onEnergiser((energiserId) => placeEarthField({ energiserId }, newId)),
  drawLeadOut: onEnergiser((energiserId, project, { n, m, x, y }) => {
    const path = pick(project.fenceLine.values(), n)?.path;
    return path ? drawLeadOut({ energiserId, path: [at(x, y), path[m % path.length]!] }, newId) : null;
  }),
  addThing: (project, { x, y, n }) => {
    const crossing = pick(project.crossing.values(), n);
    const picture = { blobId: 'b', thumbId: 't', widthPx: 4, heightPx: 3, takenAt: null, gps: null };
    const of = crossing ? ({ kind: 'crossing', id: crossing.id } as const) : null;
    if (x > 0) return addThing({ kind: 'photo', of, ...picture, fileName: 'a.jpg', caption: '' }, newId);
    return addThing({ kind: 'post', name: 'P', at: at(x, y), role: 'other', note: '' }, newId);
  },
  setGrowth: onLine((lineId, _, { n }) => setGrowth(new Map([[lineId, n % 2 === 0 ? 'heavy' : null]]))),
  setPlainWire: (project, { n }) =>
    setPlainWire({ typeId: 'ft-4', wireId: n % 2 === 0 ? null : (pick(project.conductor.keys(), n) ?? 'steel-2.5') }),
  setCoordinateSystem: (_, { n }) => setCoordinateSystem({ system: n % 2 === 0 ? 'utm' : 'degrees', own: null }),
  layUnderlay: (_, { x, y, n }) => {
    const picture = { from: 'picture', imageId: 'image-2', fileName: 'b.jpg', widthPx: 900, heightPx: 500 } as const;
    const placement = { by: 'eye', at: at(x, y), metresPerPixel: 0.2, upDeg: n } as const;
    const id = newId('underlay');
    return layUnderlay({ id, name: 'Plan', source: picture, placement, opacity: 1, shown: true, note: '' });
  },
  moveUnderlay: (project, { n, end }) => {
    const underlay = pick(project.underlay.values(), n);
    return underlay ? moveUnderlay({ id: underlay.id, way: end === 'end' ? 'up' : 'down' }) : null;
  },
  placeOnEarth: (_, { x, y, n }) =>
    placeOnEarth({ point: { grid: [x, y], earth: [-31 + n / 100, -42] }, gridNorthDeg: n }),
  placeByPicture: (project, { n }) => {
    const underlay = pick(project.underlay.values(), n);
    return underlay ? placeByPicture({ underlayId: underlay.id, pixel: [10, 10], earth: [-31, -42] }) : null;
  },

  changeItem: (project, { n, share }) => changeItem(itemOf(project, n), { price: 100 * share }),
  addItem: () => (now) => addItem('New item')(now, newId),
  addItemFor: () => (now) =>
    addItemFor({ name: message('order.goods.pipe', { boreMm: 19 }), key: 'pipe:19', unit: 'm' })(now, newId),
  deleteItem: (project, { n }) => deleteItem(itemOf(project, n)),
  changeKit: (project, { n }) => {
    const kit = pick(priceListOf(project).kits, n);
    return kit ? changeKit(kit.id, { name: `Kit ${n}` }) : null;
  },
  addKit: (project, { n }) => {
    const parts = [{ itemId: itemOf(project, n), amount: 2 }];
    return (now) => addKit('Kit', 'gateway', parts)(now, newId);
  },
  deleteKit: (project, { n }) => {
    const kit = pick(priceListOf(project).kits, n);
    return kit ? deleteKit(kit.id) : null;
  },
  setLabourRate: (_, { n, share }) => setLabourRate(n % 2 === 0 ? 'gateway' : 'fenceKm', share > 0.2 ? share : null),
  addStage: () => (now) => addStage('Next')(now, newId),
  deleteStage: onStage((id) => deleteStage(id)),
  moveStage: onStage((id, _, { end }) => moveStage(id, end === 'end' ? 1 : -1)),
  putInStage: onStage((id, project, { n, m }) => {
    const thing = pick(
      buildableKinds.flatMap((kind) => [...project[kind].keys()]),
      n,
    );
    return thing === undefined ? null : putInStage([thing], m % 3 === 0 ? null : id);
  }),
  changeTerms: (_, { n }) => changeTerms({ taxPercent: n }),
  setDroppers: (project, { n, m }) => setDroppers(pick(project.fenceType.keys(), n)!, m % 4),
  keepPlan:
    (_, { n }) =>
    (now) =>
      keepPlan(`Plan ${n}`, day)(now, newId),
  goBackTo: (project, { n }) => {
    const plan = pick(project.keptPlan.keys(), n);
    return plan === undefined ? null : goBackTo(plan);
  },
  deleteKeptPlan: (project, { n }) => {
    const plan = pick(project.keptPlan.keys(), n);
    return plan === undefined ? null : deleteKeptPlan(plan);
  },

  handOver: () => handOver({ date: day, by: 'the crew', to: 'the owner', note: '' }, newId),
  markBuilt: (project, { n }) => {
    const thing = buildableOf(project, n);
    return thing ? markBuilt([thing], { date: day, by: 'the crew' }, surveyOf(project)) : null;
  },
  markPlanned: (project, { n }) => {
    const thing = buildableOf(project, n);
    return thing ? markPlanned([thing]) : null;
  },
  recordCrossing: (project, { n, share }) => {
    const id = pick(project.crossing.keys(), n);
    return id === undefined ? null : recordCrossing(id, { depths: [{ alongM: 1, depthM: share }], soil: 'sand' });
  },
  recordPoint: (project, { n, m, share }) => {
    const crossingId = pick(project.crossing.keys(), n);
    if (crossingId === undefined) return null;
    const role = (['startFoot', 'bend', 'endFoot', 'point'] as const)[m % 4]!;
    const known = [...project.buriedPoint.values()].find((point) => {
      return point.crossingId === crossingId && point.role === role;
    });
    const to = { offset: { alongM: 4 * share, leftM: 0.5 } };
    return recordPoint({ id: known?.id ?? newId('buriedPoint'), crossingId, role, rank: m, to });
  },
  trackAsTrench: (project, { n }) => {
    const crossing = pick(project.crossing.values(), n);
    const survey = surveyOf(project);
    const shape = crossing && survey.gateways.get(crossing.gatewayId);
    if (!crossing || !shape) return null;
    const path = [shape.startPostAt, survey.plane.toLonLat([shape.centre[0], shape.centre[1] + 1]), shape.endPostAt];
    return trackAsTrench({ crossingId: crossing.id, path, seM: 0.4 }, survey, newId);
  },
  keepFaultSearch: (project, { n }) => {
    const search = pick(project.faultHunt.values(), n);
    if (!search) return null;
    const found = { outcome: 'found', section: 'B', place: 'F1', confirmed: false, cause: '' } as const;
    return keepFaultSearch(ended(setAside(search, 0), { at: `${day}T10:00`, ...found }));
  },
};

type LineAttempt = (lineId: string, path: readonly LonLat[], dice: Dice) => Edit | null;

function onLine(attempt: LineAttempt): (project: Project, dice: Dice) => Edit | null {
  return (project, dice) => {
    const line = pick(project.fenceLine.values(), dice.n);
    return line ? attempt(line.id, line.path, dice) : null;
  };
}

function onTwoLines(attempt: (lineId: string, otherId: string, dice: Dice) => Edit) {
  return (project: Project, dice: Dice): Edit | null => {
    const ids = [...project.fenceLine.keys()];
    if (ids.length < 2) return null;
    return attempt(ids[dice.n % ids.length]!, ids[dice.m % ids.length]!, dice);
  };
}

type IdAttempt = (id: string, project: Project, dice: Dice) => Edit | null;

function onEach(kind: 'gateway' | 'energiser' | 'stage', attempt: IdAttempt) {
  return (project: Project, dice: Dice): Edit | null => {
    const id = pick(project[kind].keys(), dice.n);
    return id === undefined ? null : attempt(id, project, dice);
  };
}

function onGateway(attempt: IdAttempt) {
  return onEach('gateway', attempt);
}

function onEnergiser(attempt: IdAttempt) {
  return onEach('energiser', attempt);
}

function onStage(attempt: IdAttempt) {
  return onEach('stage', attempt);
}

/** A place for a switch, of every sort; at a gateway that is not there where there is nothing of that sort. */
function placeOf(project: Project, { n, m, share, end }: Dice): SwitchPlace {
  const line = pick(project.fenceLine.values(), m);
  const leadOut = pick(project.leadOut.keys(), m);
  if (n % 4 === 1 && line) return { on: 'lineEnd', lineId: line.id, end };
  if (n % 4 === 2 && line) return { on: 'line', lineId: line.id, atM: share * pathIn(project, line.path).lengthM };
  if (n % 4 === 3 && leadOut !== undefined) return { on: 'leadOut', leadOutId: leadOut };
  return { on: 'gateway', gatewayId: pick(project.gateway.keys(), m) ?? 'none', post: end };
}

function itemOf(project: Project, n: number): string {
  return pick(priceListOf(project).items.keys(), n)!;
}

function buildableOf(project: Project, n: number) {
  const things = buildableKinds.flatMap((kind) => [...project[kind].keys()].map((id) => ({ kind, id })));
  return pick(things, n);
}
