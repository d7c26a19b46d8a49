import fc from 'fast-check';
import { acceptPlan, whyNotAcceptPlan } from '../../core/model/edits/acceptPlan.ts';
import { addCandidatePlace, whyNotAddCandidatePlace } from '../../core/model/edits/addCandidatePlace.ts';
import { changeThing, whyNotChangeThing } from '../../core/model/edits/changeThing.ts';
import { deleteThings, whyNotDeleteThings } from '../../core/model/edits/deleteThings.ts';
import { deleteVertex, whyNotDeleteVertex } from '../../core/model/edits/deleteVertex.ts';
import { extendLine, whyNotExtendLine } from '../../core/model/edits/extendLine.ts';
import { fixCrossing, whyNotFixCrossing } from '../../core/model/edits/fixCrossing.ts';
import { insertVertex, whyNotInsertVertex } from '../../core/model/edits/insertVertex.ts';
import { joinGap, whyNotJoinGap } from '../../core/model/edits/joinGap.ts';
import { joinLines, whyNotJoinLines } from '../../core/model/edits/joinLines.ts';
import { moveGateway, whyNotMoveGateway } from '../../core/model/edits/moveGateway.ts';
import { moveThing, whyNotMoveThing } from '../../core/model/edits/moveThing.ts';
import { moveVertex, whyNotMoveVertex } from '../../core/model/edits/moveVertex.ts';
import { nameNewPaddocks } from '../../core/model/edits/nameNewPaddocks.ts';
import { placeSwitch, whyNotPlaceSwitch } from '../../core/model/edits/placeSwitch.ts';
import { renameThing, whyNotRenameThing } from '../../core/model/edits/renameThing.ts';
import { setCrossing, whyNotSetCrossing } from '../../core/model/edits/setCrossing.ts';
import { setGatewayWidth, whyNotSetGatewayWidth } from '../../core/model/edits/setGatewayWidth.ts';
import { setRule } from '../../core/model/edits/setRule.ts';
import { splitLine, whyNotSplitLine } from '../../core/model/edits/splitLine.ts';
import type { Edit, WhyNot } from '../../core/model/edits/support/edit.ts';
import { pathIn } from '../../core/model/edits/support/path.ts';
import { allThings, type Project } from '../../core/model/project.ts';
import type { LineEnd, LonLat } from '../../core/model/things.ts';
import { measured } from '../../core/shapes/measuredPath.ts';
import { switchCandidates } from '../../core/survey/candidates.ts';
import { surveyOf } from '../../core/survey/survey.ts';
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

type Attempt = readonly [WhyNot, Edit];

/** Every edit with parameters thrown by dice, or null where the project has nothing to try it on. */
export const attempts: Readonly<Record<string, (project: Project, dice: Dice) => Attempt | null>> = {
  insertVertex: onLine((lineId, path, { m, x, y }) => {
    const wanted = { lineId, segment: m % (path.length - 1), at: at(x, y) };
    return [whyNotInsertVertex(wanted), insertVertex(wanted)];
  }),
  moveVertex: onLine((lineId, path, { m, x, y }) => {
    const wanted = { lineId, index: m % path.length, to: at(x, y), alone: x > 0 };
    return [whyNotMoveVertex(wanted), moveVertex(wanted)];
  }),
  deleteVertex: onLine((lineId, path, { m }) => {
    const wanted = { lineId, index: m % path.length };
    return [whyNotDeleteVertex(wanted), deleteVertex(wanted)];
  }),
  extendLine: onLine((lineId, _, { x, y, end }) => {
    const wanted = { lineId, end, onward: [at(x, y)] };
    return [whyNotExtendLine(wanted), extendLine(wanted)];
  }),
  splitLine: onLine((lineId, path, { share, m }) => {
    const { stationsM } = measured(testPlane, path);
    const atM = share < 0.3 ? stationsM[m % stationsM.length]! : share * stationsM.at(-1)!;
    const wanted = { lineId, atM };
    return [whyNotSplitLine(wanted), splitLine(wanted, countingIds(500))];
  }),
  joinLines: onTwoLines((lineId, otherId) => [whyNotJoinLines({ lineId, otherId }), joinLines({ lineId, otherId })]),
  fixCrossing: onTwoLines((lineId, otherId, { x, y }) => {
    const wanted = { lineId, otherId, near: at(x, y) };
    return [whyNotFixCrossing(wanted), fixCrossing(wanted)];
  }),
  joinGap: onTwoLines((lineId, toLineId, { end }) => {
    const wanted = { lineId, end, toLineId };
    return [whyNotJoinGap(wanted), joinGap(wanted)];
  }),
  moveGateway: onGateway((gatewayId, project, { n, share }) => {
    const line = [...project.fenceLine.values()][n % project.fenceLine.size]!;
    const wanted = { gatewayId, lineId: line.id, atM: share * pathIn(project, line.path).lengthM };
    return [whyNotMoveGateway(wanted), moveGateway(wanted)];
  }),
  setGatewayWidth: onGateway((gatewayId, _, { share, end }) => {
    const wanted = { gatewayId, widthM: 1 + 9 * share, keep: end };
    return [whyNotSetGatewayWidth(wanted), setGatewayWidth(wanted)];
  }),
  setCrossing: onGateway((gatewayId, _, { share, n }) => {
    const wanted = { gatewayId, to: n % 4 === 0 ? null : { bowM: share, earth: n % 2 === 0 } };
    return [whyNotSetCrossing(wanted), setCrossing(wanted, countingIds(500))];
  }),
  placeSwitch: onGateway((gatewayId, _, { end }) => {
    const wanted = { place: { on: 'gateway', gatewayId, post: end } } as const;
    return [whyNotPlaceSwitch(wanted), placeSwitch(wanted, countingIds(500))];
  }),
  acceptPlan: (project, { n, share }) => {
    const surplus = [...project.switch.keys()].filter((_, i) => (i + n) % 2 === 0);
    const missing = [...project.gateway.keys()].map((gatewayId) => {
      return { place: { on: 'gateway', gatewayId, post: share < 0.5 ? 'start' : 'end' } } as const;
    });
    return [whyNotAcceptPlan({ missing, surplus }), acceptPlan({ missing, surplus }, countingIds(500))];
  },
  addCandidatePlace: onLine((lineId, path, { share }) => {
    const wanted = { lineId, atM: share * measured(testPlane, path).lengthM, cost: null };
    return [whyNotAddCandidatePlace(wanted), addCandidatePlace(wanted, countingIds(500))];
  }),
  setRule: (project, { n, m }) => {
    const keys = candidatesOf(project).map(({ key }) => key);
    if (keys.length === 0) return null;
    const rule = ([null, 'forced', 'forbidden'] as const)[m % 3]!;
    return [() => null, setRule({ key: keys[n % keys.length]!, rule })];
  },
  deleteThings: (project, { n }) => {
    const things = [...allThings(project)].filter(({ kind }) => kind !== 'property' && kind !== 'fenceType');
    const refs = things.slice(n % things.length, (n % things.length) + 2);
    return [whyNotDeleteThings(refs), deleteThings(refs)];
  },
  changeThing: onLine((id, _, { n }) => {
    const wanted = { kind: 'fenceLine', id, to: { live: n % 2 === 0, note: `note ${n}` } } as const;
    return [whyNotChangeThing(wanted), changeThing(wanted)];
  }),
  renameThing: onGateway((id, _, { n }) => {
    const wanted = { kind: 'gateway', id, name: `G${n % 5}` } as const;
    return [whyNotRenameThing(wanted), renameThing(wanted)];
  }),
  moveThing: (project, { x, y, n }) => {
    const points = [...project.post.values(), ...project.energiser.values()];
    const thing = points[n % Math.max(1, points.length)];
    if (!thing) return null;
    const wanted = { kind: thing.kind, id: thing.id, to: at(x, y) };
    return [whyNotMoveThing(wanted), moveThing(wanted)];
  },
  nameNewPaddocks: (_, { x, y }) => [() => null, nameNewPaddocks([at(x, y), at(y, x)], countingIds(500))],
};

type LineAttempt = (lineId: string, path: readonly LonLat[], dice: Dice) => Attempt;

function onLine(attempt: LineAttempt): (project: Project, dice: Dice) => Attempt | null {
  return (project, dice) => {
    const line = [...project.fenceLine.values()][dice.n % Math.max(1, project.fenceLine.size)];
    return line ? attempt(line.id, line.path, dice) : null;
  };
}

function onTwoLines(attempt: (lineId: string, otherId: string, dice: Dice) => Attempt) {
  return (project: Project, dice: Dice): Attempt | null => {
    const ids = [...project.fenceLine.keys()];
    if (ids.length < 2) return null;
    return attempt(ids[dice.n % ids.length]!, ids[dice.m % ids.length]!, dice);
  };
}

function onGateway(attempt: (gatewayId: string, project: Project, dice: Dice) => Attempt) {
  return (project: Project, dice: Dice): Attempt | null => {
    const gateway = [...project.gateway.values()][dice.n % Math.max(1, project.gateway.size)];
    return gateway ? attempt(gateway.id, project, dice) : null;
  };
}

const candidatesOf = (project: Project) => switchCandidates(project, surveyOf(project));
