import { type Box, boxAround } from '../../../core/geometry/box.ts';
import type { LocalPlane } from '../../../core/geometry/localPlane.ts';
import { pictureMap } from '../../../core/geometry/picture/pictureMap.ts';
import type { Xy } from '../../../core/geometry/types.ts';
import type { Project } from '../../../core/model/project.ts';

/** Where a map or picture underneath lies; null where there is none of this id. */
export function underlayBox(project: Project, plane: LocalPlane, id: string): Box | null {
  const underlay = project.underlay.get(id);
  if (!underlay) return null;
  const { source, placement } = underlay;
  if (source.from === 'tileFile') {
    const [west, south, east, north] = source.bounds;
    return boxAround([
      plane.toXy([west, south]),
      plane.toXy([east, south]),
      plane.toXy([west, north]),
      plane.toXy([east, north]),
    ]);
  }
  if (!placement) return null;
  const { toXy } = pictureMap(placement, source, plane);
  const { widthPx, heightPx } = source;
  const corners: readonly Xy[] = [
    [0, 0],
    [widthPx, 0],
    [0, heightPx],
    [widthPx, heightPx],
  ];
  return boxAround(corners.map(toXy));
}

/** Around all pictures underneath; tile files may be of a whole country and don't count. */
export function picturesBox(project: Project, plane: LocalPlane): Box | null {
  const pictures = [...project.underlay.values()].filter(({ source }) => source.from === 'picture');
  const boxes = pictures.map(({ id }) => underlayBox(project, plane, id)).filter((box) => box !== null);
  return boxAround(
    boxes.flatMap(([west, south, east, north]): Xy[] => [
      [west, south],
      [east, north],
    ]),
  );
}
