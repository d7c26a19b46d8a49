import type { Xy } from '../../../core/geometry/types.ts';
import { add, scale } from '../../../core/geometry/vector.ts';
import { switchReachPx } from '../signs/switchSign.ts';
import type { SwitchPart } from './parts.ts';

/** Where a switch's sign is drawn: clear of the gate post or the junction that it stands at, at any scale. */
export function switchSignXy({ row, into }: Pick<SwitchPart, 'row' | 'into'>, pxPerM: number): Xy {
  return add(row.xy, scale(into, (switchReachPx + 8) / pxPerM));
}
