import type { Xy } from '../../core/geometry/types.ts';
import { xyDistanceM } from '../../core/geometry/vector.ts';
import { crossingAsBuilt } from '../../core/locate/crossingAsBuilt.ts';
import { crossingSource, inGroundSource } from '../../core/locate/crossingSource.ts';
import { type GroundAnswer, withAnswer } from '../../core/locate/inGround/answer.ts';
import { crossingsInGround } from '../../core/locate/inGround/crossingsInGround.ts';
import { touchedBy } from '../../core/locate/inGround/touched.ts';
import { fixedPosts } from '../../core/locate/tieFrom.ts';
import { difference } from '../../core/model/difference.ts';
import { deleteThings, type ThingRef } from '../../core/model/edits/deleteThings.ts';
import { type Project, put } from '../../core/model/project.ts';
import { builtMarkId, newBuriedPoint, newCrossingRecord } from '../../core/model/recordDefaults.ts';
import type { BuriedPoint, BuriedRole, Photo, TapeTie } from '../../core/model/recordThings.ts';
import type { EarthField, LonLat } from '../../core/model/things.ts';
import { surveyOf } from '../../core/survey/survey.ts';
import { at, bridgedGateway, drawing, energiser, leadOut, line, strainer } from './drawings.ts';
import { inEnglish } from './english.ts';
import { countingIds } from './ids.ts';

/**
 * An invented fence along the x axis with everything in the ground: G1 (48 to 52 m) built and taped from its own posts
 * and P1, G2 (98 to 102 m) built and not measured, G3 (148 to 152 m) planned and taped all the same, G4 (178 to 182 m)
 * only planned; a built lead-out in the ground and built earth stakes.
 */
export function recordedDrawing(): Project {
  const built = { status: 'built' } as const;
  const bare = drawing(
    line(
      'F1',
      [
        [0, 0],
        [200, 0],
      ],
      built,
    ),
    bridgedGateway('G1', 'F1', 50, built).map((thing) => ({ ...thing, ...built })),
    bridgedGateway('G2', 'F1', 100, built).map((thing) => ({ ...thing, ...built })),
    bridgedGateway('G3', 'F1', 150),
    bridgedGateway('G4', 'F1', 180),
    strainer('P1', [45, 6]),
    energiser('E1', [-5, 10], built),
    leadOut(
      'L1',
      'E1',
      [
        [-5, 10],
        [-5, 2],
        [0, 0],
      ],
      built,
    ),
    earthStakes('EF1', 'E1', [-8, 12]),
  );
  const posts = new Map(fixedPosts(bare, surveyOf(bare)).map((post) => [post.key, post]));
  const tie = (key: string, target: Xy): TapeTie => {
    const { from, name, at: postAt, xy } = posts.get(key)!;
    return { from, postName: inEnglish(name), postAt, distanceM: xyDistanceM(xy, target), seM: 0.01 };
  };
  const point = (id: string, crossingId: string, role: BuriedRole, target: Xy, keys: string[]): BuriedPoint => {
    const side = target[1] >= 0 ? 'left' : 'right';
    return { ...newBuriedPoint(id, crossingId, role), ties: keys.map((key) => tie(key, target)), side };
  };
  const own = (gateway: string) => [`gatePost:${gateway}:start`, `gatePost:${gateway}:end`];
  return put(
    bare,
    { ...newCrossingRecord('X-G1'), depths: [{ alongM: 2, depthM: 0.35 }], soil: 'clay' },
    point('G1 start', 'X-G1', 'startFoot', [47.8, 0.2], own('G1')),
    point('G1 bend', 'X-G1', 'bend', [50, 1.2], [...own('G1'), 'post:P1']),
    point('G1 end', 'X-G1', 'endFoot', [52.2, 0.1], own('G1')),
    point('G3 bend', 'X-G3', 'bend', [150, -1.4], [...own('G3'), 'gatePost:G2:end']),
    photo('photo-1', 'X-G1'),
    {
      kind: 'builtMark',
      id: builtMarkId('crossing', 'X-G1'),
      thingKind: 'crossing',
      thingId: 'X-G1',
      date: '2025-02-11',
      by: 'the crew',
      note: '',
      planned: null,
    },
  );
}

function earthStakes(id: string, energiserId: string, xy: Xy): EarthField {
  return {
    kind: 'earthField',
    id,
    energiserId,
    at: at(xy),
    rods: 3,
    rodLengthM: 2,
    rodDiameterMm: 16,
    spacingM: 3,
    status: 'built',
    note: '',
  };
}

function photo(id: string, crossingId: string): Photo {
  return {
    kind: 'photo',
    id,
    of: { kind: 'crossing', id: crossingId },
    blobId: 'blob',
    thumbId: 'thumb',
    widthPx: 10,
    heightPx: 10,
    takenAt: null,
    gps: null,
    fileName: 'trench.jpg',
    caption: 'The open trench',
  };
}

/** Where everything in the ground lies, as paths by what it was first called; what was taken out is left out. */
export function placesInGround(project: Project): Map<string, LonLat[]> {
  const survey = surveyOf(project);
  const places = new Map<string, LonLat[]>();
  for (const crossing of crossingsInGround(project).values()) {
    const source = crossingSource(project, survey, crossing.gatewayId);
    if (source) places.set(crossing.id, crossingAsBuilt(source).path.map(survey.plane.toLonLat));
  }
  for (const { id, path, buried, status } of project.leadOut.values()) {
    if (buried && status === 'built') places.set(id, [...path]);
  }
  for (const { id, at: stood, status } of project.earthField.values()) if (status === 'built') places.set(id, [stood]);
  for (const { was, fate } of project.inGround.values()) {
    if (fate === 'takenOut') continue;
    if (was.what === 'leadOut') places.set(was.leadOut.id, [...was.leadOut.path]);
    else if (was.what === 'earthField') places.set(was.earthField.id, [was.earthField.at]);
    else {
      const path = crossingAsBuilt(inGroundSource(project, survey, was)).path;
      places.set(was.crossing.id, path.map(survey.plane.toLonLat));
    }
  }
  return places;
}

/** The same after the energiser was deleted (what it had in the ground may be live) and G1 (its crossing dead). */
export function drawingWithLeft(): Project {
  const taken = answeredSo(recordedDrawing(), { kind: 'energiser', id: 'E1' }, 'stays');
  return answeredSo(taken, { kind: 'gateway', id: 'G1' }, 'dead');
}

function answeredSo(before: Project, ref: ThingRef, answer: GroundAnswer): Project {
  const after = deleteThings([ref])(before);
  const touch = touchedBy(before, after, difference(before, after));
  const ids = countingIds(before.inGround.size);
  return withAnswer({ before, after, touch, newId: ids, date: '2026-11-30' }, answer);
}
