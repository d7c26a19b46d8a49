import type { LocalPlane } from '../../geometry/localPlane.ts';
import { countCrossings } from '../../geometry/segments.ts';
import { createSpatialIndex, type SpatialIndex } from '../../geometry/spatialIndex.ts';
import { newEnergiser, newFenceLine, newGateway } from '../../model/defaults.ts';
import { placeGateway, whyNotPlaceGateway } from '../../model/edits/placeGateway.ts';
import { whyNotFields } from '../../model/edits/support/checkFields.ts';
import { EditRefused, type Refusal } from '../../model/edits/support/edit.ts';
import { pathIn, withoutDoubles } from '../../model/edits/support/path.ts';
import { whyNotPath, whyNotPoint } from '../../model/edits/support/whyNotPath.ts';
import { largestOf } from '../../model/extremes.ts';
import { nextName } from '../../model/names.ts';
import { propertyOf, putAll } from '../../model/project.ts';
import type { LonLat, Service, ServiceKind, Thing } from '../../model/things.ts';
import { stationOf } from '../../shapes/measuredPath.ts';
import { planeOf } from '../../shapes/workingPlane.ts';
import { message } from '../../words/message.ts';
import type { ImportAs, PreviewFeature } from '../preview/types.ts';
import type { ImportChoices } from './importFeatures.ts';
import { importHeights } from './importHeights.ts';
import { clauseOf, type Intake, tell } from './intake.ts';
import { mostOwnCrossings, roughXy, simplifiedPath, untangledPath } from './simplifiedPath.ts';
import { snapEnds } from './snapEnds.ts';

/** Takes over features of other programs as what the user chose. Lines come first, so that gateways find them. */
export function importForeign(intake: Intake, features: readonly PreviewFeature[], choices: ImportChoices): void {
  const foreign = features.filter(({ ours }) => !ours);
  const asOf = intake.become;
  const things: Thing[] = [];
  for (const feature of foreign) {
    const as = asOf(feature);
    if (as === 'leaveOut' || as === 'gateway' || as === 'heights') continue;
    const simple = simplifiedFeature(intake, feature, as, choices.simplifyM);
    if (!simple) {
      tell(
        intake,
        feature,
        message('exchange.taken.crossesItself', { times: mostOwnCrossings }),
        message('exchange.remedy.simplifyMore'),
      );
      continue;
    }
    const made = madeOf(intake, simple, as, choices);
    if ('message' in made) tell(intake, feature, clauseOf(made), message('exchange.remedy.selectOther'));
    else things.push(made);
  }
  noteStanding(intake);
  const settled = choices.snapEndsM > 0 ? snapEnds(intake, things, choices.snapEndsM) : things;
  assertNoTangle(intake, settled);
  intake.project = putAll(intake.project, settled);
  intake.added += things.length;
  importHeights(
    intake,
    foreign.filter((feature) => asOf(feature) !== 'leaveOut'),
    choices,
  );
  const gateways = foreign.filter((feature) => asOf(feature) === 'gateway');
  if (gateways.length > 0) importGateways(intake, gateways, choices);
}

function madeOf(intake: Intake, feature: PreviewFeature, as: ImportAs, choices: ImportChoices): Thing | Refusal {
  const { project, newId } = intake;
  const { shape, path, name } = feature;
  if (as === 'fenceLine' || as === 'boundary') {
    if (shape === 'point') return { code: 'wrongShape', message: message('exchange.import.pointAsLine') };
    const refusal =
      whyNotPath(project, path, 'line') ??
      whyNotSoMany(path) ??
      whyNotFields(project, 'fenceLine', null, { typeId: choices.typeId });
    if (refusal) return refusal;
    const { typeId, status } = choices;
    const line = {
      id: newId('fenceLine'),
      name,
      typeId,
      status,
      live: as === 'fenceLine',
      path: withoutDoubles(project, path),
    };
    return newFenceLine(line);
  }
  const refusal = whyNotSoMany(path);
  if (refusal) return refusal;
  for (const vertex of path) {
    const whyNot = whyNotPoint(project, vertex);
    if (whyNot) return whyNot;
  }
  if (as === 'post' || as === 'energiser') {
    if (shape !== 'point') return { code: 'wrongShape', message: message('exchange.import.onlyPoint') };
    const [at] = path;
    if (as === 'post') return { kind: 'post', id: newId('post'), name, at: at!, role: 'strainer', note: '' };
    const taken = whyNotFields(project, 'energiser', null, { name });
    const free = taken ? nextName(project, 'energiser') : name;
    return { ...newEnergiser(newId('energiser'), free, at!), status: choices.status };
  }
  return serviceOf(newId('service'), feature, as as ServiceKind);
}

/** Most vertices that one line of a property file may have. */
const mostVertices = 50_000;

function whyNotSoMany(path: readonly LonLat[]): Refusal | null {
  if (path.length <= mostVertices) return null;
  const values = { points: path.length, most: mostVertices };
  return { code: 'tooManyPoints', message: message('exchange.import.tooManyPoints', values) };
}

/** Null: it is a tangle that simplifying does not undo. Only fences meet themselves; of services it does not matter. */
function simplifiedFeature(
  intake: Intake,
  feature: PreviewFeature,
  as: ImportAs,
  toleranceM: number,
): PreviewFeature | null {
  if (feature.shape !== 'line' && feature.shape !== 'outline') return feature;
  const { origin } = propertyOf(intake.project);
  if (as !== 'fenceLine' && as !== 'boundary') {
    return { ...feature, path: simplifiedPath(feature.path, toleranceM, origin) };
  }
  const untangled = untangledPath(feature.path, toleranceM, origin);
  if (!untangled) return null;
  if (untangled.togetherM > 0) intake.standing.push(untangled.togetherM);
  return { ...feature, path: untangled.path };
}

function noteStanding({ standing, notes }: Intake): void {
  if (standing.length === 0) return;
  notes.push(message('exchange.intake.standing', { lines: standing.length, withinM: largestOf(standing) }));
}

/** Fences that cross one another more often than this take too long to look through, each time the property is opened. */
const mostCrossings = 20_000;

function assertNoTangle(intake: Intake, things: readonly Thing[]): void {
  const { origin } = propertyOf(intake.project);
  const lines = things.flatMap((thing) => (thing.kind === 'fenceLine' ? [roughXy(thing.path, origin)] : []));
  if (countCrossings(lines, mostCrossings) <= mostCrossings) return;
  throw new EditRefused({ code: 'tangled', message: message('exchange.import.tangled', { times: mostCrossings }) });
}

function serviceOf(id: string, { name, path, voltageV }: PreviewFeature, what: ServiceKind): Service {
  const buried = what === 'waterPipe' || what === 'gasPipe' || what === 'dataCable';
  return {
    kind: 'service',
    id,
    name,
    what,
    path,
    voltageV: what === 'powerLine' ? voltageV : null,
    buried,
    open: null,
    note: '',
  };
}

function importGateways(intake: Intake, features: readonly PreviewFeature[], choices: ImportChoices): void {
  const plane = planeOf(intake.project);
  const lines = [...intake.project.fenceLine.values()].map(
    ({ id, path }) => [id, pathIn(intake.project, path).xy] as const,
  );
  const index = createSpatialIndex(lines);
  for (const feature of features) {
    const place = feature.shape === 'point' ? nearestLine(intake, index, plane, feature, choices.gatewaySnapM) : null;
    if (!place) {
      const why = message('exchange.taken.noFenceNear', { withinM: choices.gatewaySnapM });
      tell(intake, feature, why, message('exchange.remedy.raiseDistance'));
      continue;
    }
    const { project } = intake;
    const free = whyNotFields(project, 'gateway', null, { name: feature.name })
      ? nextName(project, 'gateway')
      : feature.name;
    const widthM = feature.widthM ?? choices.gatewayWidthM;
    const { status } = choices;
    const wanted = { ...place, name: free, widthM, status, leaves: widthM > doubledFromM ? 2 : 1 } as const;
    const refusal = whyNotPlaceGateway(wanted)(project);
    if (refusal) {
      tell(intake, feature, clauseOf(refusal), message('exchange.remedy.moveOrPlace'));
      continue;
    }
    intake.project = placeGateway(wanted, intake.newId)(project);
    intake.added++;
  }
}

/** Wider openings have two leaves; common practice, no source. */
const doubledFromM = 6;

function nearestLine(
  { project }: Intake,
  index: SpatialIndex<string>,
  plane: LocalPlane,
  { path: [at], widthM }: PreviewFeature,
  withinM: number,
): { lineId: string; atM: number } | null {
  const near = index.nearest(plane.toXy(at!), withinM);
  if (!near) return null;
  const line = pathIn(project, project.fenceLine.get(near.key)!.path);
  const { lengthM } = line;
  const atM = stationOf(line, near);
  // A point on a gate's post at the end of a line stands for the gate beside it.
  const halfM = (widthM ?? newGateway({ id: '', name: '', lineId: '', atM: 0 }).widthM) / 2;
  return { lineId: near.key, atM: lengthM < 2 * halfM ? atM : Math.min(lengthM - halfM, Math.max(halfM, atM)) };
}
