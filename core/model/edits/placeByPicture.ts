import { pictureMap } from '../../geometry/picture/pictureMap.ts';
import { planeOf } from '../../shapes/workingPlane.ts';
import { message } from '../../words/message.ts';
import { allThings, type Project, put } from '../project.ts';
import type { LonLat } from '../things.ts';
import type { ByEye, PicturePlace, PictureSource, Underlay } from '../underlayThings.ts';
import { notDrawn } from './layUnderlay.ts';
import { placeOnEarth, whyNotPlaceOnEarth } from './placeOnEarth.ts';
import { type Edit, firstRefusal, guarded, type Refusal, type WhyNot } from './support/edit.ts';

/** A place of a picture that was laid by eye, and where it is on earth. */
export interface PlaceByPicture {
  readonly underlayId: string;
  readonly pixel: PicturePlace;
  readonly earth: LonLat;
}

/**
 * Gives a property on which nothing is drawn yet its place on earth by a picture's first control point, which it keeps.
 * The grid's north is taken for true north: nothing is drawn that could lie turned, and the picture's further points turn
 * the picture.
 */
export function placeByPicture({ underlayId, pixel, earth }: PlaceByPicture): Edit {
  return guarded(whyNotPlaceByPicture({ underlayId, pixel, earth }), (project) => {
    const { source, placement } = pictureByEye(project, underlayId)!;
    const plane = planeOf(project);
    const grid = pictureMap(placement, source, plane).toXy(pixel);
    const placed = placeOnEarth({ point: { grid, earth }, gridNorthDeg: 0 })(project);
    const underlay = placed.underlay.get(underlayId)!;
    const before = underlay.placement as ByEye;
    return put(placed, {
      ...underlay,
      placement: { by: 'points', fit: 'similarity', points: [{ pixel, at: earth }], before },
    });
  });
}

/** `placed`, `outOfRange`, `drawn` (something would have to move), `notFound` (no such picture, laid by eye). */
export function whyNotPlaceByPicture({ underlayId, earth }: PlaceByPicture): WhyNot {
  return (project) =>
    firstRefusal(
      () => (pictureByEye(project, underlayId) ? null : notFound),
      () => whyNotPlaceOnEarth({ point: { grid: [0, 0], earth }, gridNorthDeg: 0 })(project),
      () => (isBare(project) ? null : drawn),
    );
}

const notFound: Refusal = {
  code: 'notFound',
  message: message('edits.underlays.gone'),
};

const drawn: Refusal = {
  code: 'drawn',
  message: message('edits.underlays.drawn'),
};

/** Nothing is drawn, and no picture is measured on the grid, so that nothing has a place or a direction to lose. */
function isBare(project: Project): boolean {
  const measured = [...project.underlay.values()].some(({ placement }) => placement && placement.by !== 'eye');
  return !measured && [...allThings(project)].every(({ kind }) => kind === 'underlay' || notDrawn.has(kind));
}

function pictureByEye(project: Project, id: string): { source: PictureSource; placement: ByEye } | null {
  const found: Underlay | undefined = project.underlay.get(id);
  return found?.source.from === 'picture' && found.placement?.by === 'eye'
    ? { source: found.source, placement: found.placement }
    : null;
}
