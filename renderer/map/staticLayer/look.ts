import type { MapInput } from '../mapTypes.ts';
import type { Palette } from '../palette.ts';
import { metresPerPx, type View } from '../plane/view.ts';
import type { Scene } from '../scene/buildScene.ts';
import type { Ctx, Pen } from '../signs/pen.ts';
import { lineWeightPx, signScale } from './weights.ts';

/** All that a painter of the settled drawing needs to know. */
export interface Look {
  readonly ctx: Ctx;
  readonly view: View;
  readonly scene: Scene;
  readonly input: MapInput;
  readonly palette: Palette;
  readonly metresPerPx: number;
  readonly linePx: number;
  readonly signScale: number;
  /** Sections carry their letter, marks and colour. */
  readonly showSections: boolean;
  /** A map or picture lies under the drawing. */
  readonly overPicture: boolean;
}

export function lookOf(ctx: Ctx, view: View, scene: Scene, input: MapInput, palette: Palette): Look {
  const scale = metresPerPx(view);
  return {
    ctx,
    view,
    scene,
    input,
    palette,
    metresPerPx: scale,
    linePx: lineWeightPx(scale),
    signScale: signScale(scale),
    showSections: input.workspace === 'divide' || input.workspace === 'find',
    overPicture: [...input.project.underlay.values()].some(({ shown }) => shown),
  };
}

export function penOf({ ctx, palette, signScale: scale }: Look, status: 'planned' | 'built'): Pen {
  return { ctx, palette, scale, built: status === 'built' };
}
