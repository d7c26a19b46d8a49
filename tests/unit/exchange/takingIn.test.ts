import { describe, expect, it } from 'vitest';
import { type ImportChoices, importFeatures, usualChoices } from '../../../core/exchange/intake/importFeatures.ts';
import { simplifiedPath } from '../../../core/exchange/intake/simplifiedPath.ts';
import type { ImportAs } from '../../../core/exchange/preview/types.ts';
import { nearestOnPolyline } from '../../../core/geometry/polyline.ts';
import { addFenceLine } from '../../../core/model/edits/addFenceLine.ts';
import { placePost } from '../../../core/model/edits/placePost.ts';
import type { Project } from '../../../core/model/project.ts';
import type { FenceLine, LonLat } from '../../../core/model/things.ts';
import { surveyOf } from '../../../core/survey/survey.ts';
import { inEnglish } from '../../support/english.ts';
import { countingIds } from '../../support/ids.ts';
import { at, emptyProject, testOrigin, testPlane } from '../../support/randomProjects.ts';
import { bytesOf, previewOfBytes } from './mapFiles.ts';

const point = ([lon, lat]: LonLat, heightM?: number) =>
  `<trkpt lat="${lat}" lon="${lon}">${heightM === undefined ? '' : `<ele>${heightM}</ele>`}</trkpt>`;
const gpx = (...tracks: string[][]) =>
  `<gpx version="1.1">${tracks.map((points, i) => `<trk><name>T${i}</name><trkseg>${points.join('')}</trkseg></trk>`).join('')}</gpx>`;

function taken(
  text: string,
  choices: Partial<ImportChoices>,
  into: Project = emptyProject(),
  as: ImportAs = 'fenceLine',
) {
  const preview = previewOfBytes('ride.gpx', bytesOf(text));
  const all = new Map(preview.features.map(({ key }) => [key, as]));
  const given = { ...usualChoices, as: all, typeId: 'ft-2', fileName: 'ride.gpx', ...choices };
  return importFeatures(preview, given, into, countingIds(10));
}

const fences = (project: Project, before = emptyProject()): FenceLine[] =>
  [...project.fenceLine.values()].filter(({ id }) => !before.fenceLine.has(id));

/** A way along the x axis that wanders by 0.8 m to either side, a point every 4 m. */
const wandering = Array.from({ length: 101 }, (_, i) => at(4 * i, i % 2 === 0 ? 0.8 : -0.8));

describe('a track', () => {
  it('is simplified to within a tolerance, and no further', () => {
    const kept = simplifiedPath(wandering, 2, testOrigin);
    expect(kept.length).toBeLessThan(10);
    const xy = kept.map(testPlane.toXy);
    for (const vertex of wandering) {
      expect(nearestOnPolyline(testPlane.toXy(vertex), xy)!.distanceM).toBeLessThanOrEqual(2);
    }
    expect(simplifiedPath(wandering, 0.5, testOrigin)).toHaveLength(wandering.length);
    expect(simplifiedPath(wandering, 0, testOrigin)).toBe(wandering);
  });

  it('comes in with as many points as the tolerance leaves', () => {
    const text = gpx(wandering.map((vertex) => point(vertex)));
    const [line] = fences(taken(text, { simplifyM: 2 }).project);
    expect(line!.path.length).toBe(simplifiedPath(wandering, 2, testOrigin).length);
  });

  it('has its ends moved onto a fence that is there, and onto a post before a fence', () => {
    const newId = countingIds();
    const wall = addFenceLine({ typeId: 'ft-2', path: [at(-3, -100), at(-3, 100)] }, newId)(emptyProject());
    const before = placePost({ at: at(402, 3) }, newId)(wall);
    const { project, notes } = taken(
      gpx(wandering.map((vertex) => point(vertex))),
      { simplifyM: 2, snapEndsM: 5 },
      before,
    );
    const [line] = fences(project, before);
    const [first, last] = [line!.path[0]!, line!.path.at(-1)!].map(testPlane.toXy);
    expect(first![0]).toBeCloseTo(-3, 3);
    expect(last![0]).toBeCloseTo(402, 3);
    expect(last![1]).toBeCloseTo(3, 3);
    expect(notes.map((note) => inEnglish(note)).join()).toContain('moved onto');
    // Joined: a node of the network where they meet.
    expect(surveyOf(project).network.nodes.some(({ roles }) => roles.includes('junction'))).toBe(true);
    expect(before.fenceLine.values().next().value).toBe(project.fenceLine.get([...before.fenceLine.keys()][0]!));
  });

  it('that comes home is closed, and one that is out of reach is left alone', () => {
    const lap = [at(0, 0), at(200, 0), at(200, 200), at(0, 200), at(1, 3)];
    const [closed] = fences(taken(gpx(lap.map((vertex) => point(vertex))), { snapEndsM: 5 }).project);
    expect(closed!.path.at(-1)).toEqual(closed!.path[0]);
    const [open] = fences(taken(gpx(lap.map((vertex) => point(vertex))), { snapEndsM: 2 }).project);
    expect(open!.path.at(-1)).toEqual(lap.at(-1));
  });

  it('joins another of the same file', () => {
    const [a, b] = [
      [at(0, 0), at(100, 0)],
      [at(50, 2), at(50, 80)],
    ];
    const { project } = taken(
      gpx(
        a!.map((v) => point(v)),
        b!.map((v) => point(v)),
      ),
      { snapEndsM: 5 },
    );
    expect(surveyOf(project).network.nodes.filter(({ roles }) => roles.includes('junction'))).toHaveLength(1);
  });

  it('gives its heights to the ground, all of them, whatever is simplified', () => {
    const text = gpx(wandering.map((vertex, i) => point(vertex, 50 + i)));
    const { project, added } = taken(text, { simplifyM: 2 });
    const [ground] = project.ground.values();
    expect(ground).toMatchObject({ name: 'Heights of ride.gpx', heights: { as: 'along', byReceiver: true } });
    expect(ground!.heights.as === 'along' && ground!.heights.ways[0]!.heightsM).toHaveLength(wandering.length);
    expect(added).toBe(2);
    expect(taken(text, { keepHeights: false }).project.ground.size).toBe(0);
  });

  it('can give its heights alone', () => {
    const text = gpx(wandering.map((vertex, i) => point(vertex, 50 + i)));
    const { project } = taken(text, {}, emptyProject(), 'heights');
    expect(project.fenceLine.size).toBe(0);
    expect(project.ground.size).toBe(1);
  });

  it('with more points than a file may hold says so, and comes in when simplified', () => {
    const long = Array.from({ length: 50_001 }, (_, i) => at(i / 10, i % 2 === 0 ? 0.1 : 0));
    const text = gpx(long.map((vertex) => point(vertex)));
    const { project, problems } = taken(text, {});
    expect(project.fenceLine.size).toBe(0);
    expect(inEnglish(problems[0]!.why)).toContain('50,001 points');
    expect(taken(text, { simplifyM: 1 }).project.fenceLine.size).toBe(1);
  });
});
