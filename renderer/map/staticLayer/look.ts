import type { Palette } from '../../../core/drawing/palette.ts';
import type { Pen } from '../../../core/drawing/pen.ts';
import type { MapInput } from '../mapTypes.ts';
import { linePen, signPen } from '../plane/screenPen.ts';
import { metresPerPx, type View } from '../plane/view.ts';
import type { Scene } from '../scene/buildScene.ts';
import { lineWeightPx } from './weights.ts';

/** Width of a text in the map's ordinary face and size, pixels. */
export type TextWidth = (text: string) => number;

/** All that the settled drawing is made of. */
export interface Look {
  readonly view: View;
  readonly scene: Scene;
  readonly input: MapInput;
  readonly palette: Palette;
  readonly textWidth: TextWidth;
  readonly metresPerPx: number;
  readonly linePx: number;
  /** Of signs. */
  readonly pen: Pen;
  /** Of marks along lines. */
  readonly linePen: Pen;
  /** Sections carry their letter, marks and colour. */
  readonly showSections: boolean;
  /** A map or picture lies under the drawing. */
  readonly overPicture: boolean;
}

export function lookOf(view: View, scene: Scene, input: MapInput, palette: Palette, textWidth: TextWidth): Look {
  const scale = metresPerPx(view);
  return {
    view,
    scene,
    input,
    palette,
    textWidth,
    metresPerPx: scale,
    linePx: lineWeightPx(scale),
    pen: signPen(scale, palette),
    linePen: linePen(scale, palette),
    showSections: input.workspace === 'divide' || input.workspace === 'find',
    overPicture: [...input.project.underlay.values()].some(({ shown }) => shown),
  };
}
