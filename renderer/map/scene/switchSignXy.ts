import { switchRadiusMm } from '../../../core/drawing/signs/switchSign.ts';
import type { Xy } from '../../../core/geometry/types.ts';
import { add, scale } from '../../../core/geometry/vector.ts';
import { signUnitPx } from '../plane/screenPen.ts';
import type { SwitchPart } from './parts.ts';

/** Of bare fence between the post and the sign, as on the sheets. */
const clearMm = 0.9;

/** Where a switch's sign is drawn: clear of the gate post or the junction that it stands at, at any scale. */
export function switchSignXy({ row, into }: Pick<SwitchPart, 'row' | 'into'>, pxPerM: number): Xy {
  return add(row.xy, scale(into, ((switchRadiusMm + clearMm) * signUnitPx(1 / pxPerM)) / pxPerM));
}
