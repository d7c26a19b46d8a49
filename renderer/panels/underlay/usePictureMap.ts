import { useMemo } from 'react';
import { type PictureMap, pictureMap } from '../../../core/geometry/picture/pictureMap.ts';
import { propertyOf } from '../../../core/model/project.ts';
import type { Underlay } from '../../../core/model/underlayThings.ts';
import { workingPlane } from '../../../core/shapes/workingPlane.ts';
import { useOpenFile } from '../../state/appState.ts';

/** Where a picture's places lie on the working plane; null for a tile file. */
export function usePictureMap({ source, placement }: Underlay): PictureMap | null {
  const plane = workingPlane(propertyOf(useOpenFile().project));
  return useMemo(
    () => (placement && source.from === 'picture' ? pictureMap(placement, source, plane) : null),
    [source, placement, plane],
  );
}
