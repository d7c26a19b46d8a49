import { create } from 'zustand';
import { pictureMap } from '../../../core/geometry/picture/pictureMap.ts';
import { isLikelyScale } from '../../../core/geometry/picture/pictureScale.ts';
import type { Xy } from '../../../core/geometry/types.ts';
import { changeThing } from '../../../core/model/edits/changeThing.ts';
import { placeByPicture, whyNotPlaceByPicture } from '../../../core/model/edits/placeByPicture.ts';
import { propertyOf } from '../../../core/model/project.ts';
import type { LonLat } from '../../../core/model/things.ts';
import type {
  ByEye,
  ByPoints,
  PicturePoint,
  PictureSource,
  Placement,
  Underlay,
} from '../../../core/model/underlayThings.ts';
import { workingPlane } from '../../../core/shapes/workingPlane.ts';
import { plainWords } from '../../../core/words/figures.ts';
import type { Placing, PlacingStep } from '../../map/underlay/types.ts';
import { useApp } from '../../state/appState.ts';
import { commit } from '../../state/session.ts';

/** A placement that gives a picture a scale which only mistaken figures give: not made until the user says so. */
export interface UnlikelyPlacement {
  readonly underlayId: string;
  readonly metresPerPixel: number;
  readonly make: () => void;
}

/** The picture that is being placed by hand, if any, and what is asked about it first. */
export const usePlacing = create<{ readonly placing: Placing | null; readonly asking: UnlikelyPlacement | null }>(
  () => ({ placing: null, asking: null }),
);

export function startPlacing(underlayId: string, way: Placing['way']): void {
  usePlacing.setState({ placing: { underlayId, way, marked: [] }, asking: null });
}

export function endPlacing(): void {
  usePlacing.setState({ placing: null, asking: null });
}

/** Answers what was asked about an unlikely placement. */
export function settleUnlikely(makeIt: boolean): void {
  const { asking } = usePlacing.getState();
  usePlacing.setState({ asking: null });
  if (makeIt) asking?.make();
}

/** Takes in what the hand did on the map, or the inspector's fields in its place. */
export function onPlacing(step: PlacingStep): void {
  const { placing } = usePlacing.getState();
  const picture = placing && pictureBeingPlaced(placing.underlayId);
  if (!placing || !picture || 'end' in step) {
    endPlacing();
    return;
  }
  const { marked } = placing;
  if ('takeBack' in step) usePlacing.setState({ placing: { ...placing, marked: marked.slice(0, -1) } });
  else if ('mark' in step) usePlacing.setState({ placing: { ...placing, marked: [...marked, step.mark] } });
  else if ('place' in step) place(placing, picture, step.place);
  else if (marked.length === 2) measure(placing, picture, step.measure);
}

interface PlacedPicture {
  readonly underlay: Underlay;
  readonly source: PictureSource;
  readonly placement: Placement;
}

function pictureBeingPlaced(underlayId: string): PlacedPicture | null {
  const underlay = useApp.getState().file?.project.underlay.get(underlayId);
  if (!underlay?.placement || underlay.source.from !== 'picture') return null;
  return { underlay, source: underlay.source, placement: underlay.placement };
}

function planeNow() {
  return workingPlane(propertyOf(useApp.getState().file!.project));
}

const said = () => plainWords().window.background;

function place(placing: Placing, picture: PlacedPicture, at: LonLat): void {
  const [pixel] = placing.marked;
  if (!pixel) return;
  usePlacing.setState({ placing: { ...placing, marked: [] } });
  if (placing.way === 'points') addPoint(picture, { pixel, at });
  else if (placing.way === 'move') {
    setPlacement(picture.underlay, moved(picture, pixel, at), 'move');
    endPlacing();
  }
}

function addPoint(picture: PlacedPicture, point: PicturePoint): void {
  const before = byPoints(picture);
  setPlacement(picture.underlay, { ...before, points: [...before.points, point] }, 'place');
}

/**
 * What to offer where latitude and longitude are typed for the marked place of a picture while the property has no place on
 * earth: to place the property by them, where nothing is drawn; else the way to where it is placed.
 */
export function offerForDegrees(earth: LonLat): { readonly label: string; readonly take: () => void } {
  const { placing } = usePlacing.getState();
  const [pixel] = placing?.marked ?? [];
  const project = useApp.getState().file?.project;
  const wanted = placing?.way === 'points' && pixel ? { underlayId: placing.underlayId, pixel, earth } : null;
  if (!wanted || !project || whyNotPlaceByPicture(wanted)(project)) {
    return { label: said().placing.openCover, take: () => useApp.setState({ page: 'cover', chosen: [] }) };
  }
  return {
    label: said().placing.placeProperty,
    take: () => {
      usePlacing.setState({ placing: { ...placing!, marked: [] } });
      void commit(said().steps.placeProperty, placeByPicture(wanted));
    },
  };
}

/** A picture's points, ready for more of them. */
function byPoints({ placement, source }: PlacedPicture): ByPoints {
  if (placement.by === 'points') return placement;
  return { by: 'points', fit: 'similarity', points: [], before: asByEye(placement, source) };
}

/** Lies as it does now, as nearly as a picture that is only turned and scaled can. */
function asByEye(placement: Placement, source: PictureSource): ByEye {
  if (placement.by === 'eye') return placement;
  const plane = planeNow();
  const { toXy, metresPerPixel } = pictureMap(placement, source, plane);
  const middle = toXy([source.widthPx / 2, source.heightPx / 2]);
  const up = toXy([source.widthPx / 2, source.heightPx / 2 - 1]);
  const upDeg = (Math.atan2(up[0] - middle[0], up[1] - middle[1]) * 180) / Math.PI;
  return { by: 'eye', at: plane.toLonLat(middle), metresPerPixel, upDeg };
}

/** The same picture, moved so that `pixel` lies at `at`. */
function moved({ placement, source }: PlacedPicture, pixel: Xy, at: LonLat): Placement {
  const plane = planeNow();
  const [fromX, fromY] = pictureMap(placement, source, plane).toXy(pixel);
  const [toX, toY] = plane.toXy(at);
  const shift = (lonLat: LonLat): LonLat => {
    const [x, y] = plane.toXy(lonLat);
    return plane.toLonLat([x + toX - fromX, y + toY - fromY]);
  };
  switch (placement.by) {
    case 'eye':
    case 'distance':
      return { ...placement, at: shift(placement.at) };
    case 'points':
      return { ...placement, points: placement.points.map((point) => ({ ...point, at: shift(point.at) })) };
    case 'coordinates':
      return { ...placement, at: placement.at.map(shift) };
  }
}

/** Scales the picture by two of its places; the first stays where it lies, and the line keeps its bearing unless one is given. */
function measure(
  { marked }: Placing,
  picture: PlacedPicture,
  { distanceM, bearingDeg }: { readonly distanceM: number; readonly bearingDeg: number | null },
): void {
  const [from, to] = marked as [Xy, Xy];
  const plane = planeNow();
  const { toXy } = pictureMap(picture.placement, picture.source, plane);
  const [a, b] = [toXy(from), toXy(to)];
  const lies = (Math.atan2(b[0] - a[0], b[1] - a[1]) * 180) / Math.PI;
  const at = plane.toLonLat(a);
  // A bearing as people take it, from true north there; the plane's own differs by a hair away from its middle.
  const end = bearingDeg === null ? null : plane.toXy(plane.earth.destination(at, bearingDeg, distanceM));
  const inPlaneDeg = end ? (Math.atan2(end[0] - a[0], end[1] - a[1]) * 180) / Math.PI : lies;
  setPlacement(picture.underlay, { by: 'distance', from, to, distanceM, at, bearingDeg: inPlaneDeg }, 'scale');
  endPlacing();
}

function setPlacement(underlay: Underlay, placement: Placement, step: 'move' | 'place' | 'scale'): void {
  askIfUnlikely(underlay, placement, () => {
    void commit(said().steps[step](underlay), changeThing({ kind: 'underlay', id: underlay.id, to: { placement } }));
  });
}

/** Makes a placement, or keeps it back and asks where it gives the picture a scale that only mistaken figures give. */
function askIfUnlikely({ id, source, placement: before }: Underlay, placement: Placement, make: () => void): void {
  const scaleOf = (lies: Placement | null) =>
    lies && source.from === 'picture' ? pictureMap(lies, source, planeNow()).metresPerPixel : null;
  const metresPerPixel = scaleOf(placement);
  const isAsked = metresPerPixel !== null && !isLikelyScale(metresPerPixel) && metresPerPixel !== scaleOf(before);
  if (!isAsked) {
    usePlacing.setState({ asking: null });
    make();
  } else usePlacing.setState({ asking: { underlayId: id, metresPerPixel, make } });
}

/** Changes the control points of a picture, as they stand when it is the edit's turn. */
export function changePoints(underlay: Underlay, change: (before: ByPoints) => Partial<ByPoints>): void {
  const { id, name, placement: now } = underlay;
  if (now?.by !== 'points') return;
  askIfUnlikely(underlay, { ...now, ...change(now) }, () => {
    void commit(said().steps.place({ name }), (project) => {
      const placement = project.underlay.get(id)?.placement;
      if (placement?.by !== 'points') return project;
      return changeThing({ kind: 'underlay', id, to: { placement: { ...placement, ...change(placement) } } })(project);
    });
  });
}

export function isSamePoint(a: PicturePoint, b: PicturePoint): boolean {
  return [0, 1].every((axis) => a.pixel[axis] === b.pixel[axis] && a.at[axis] === b.at[axis]);
}
