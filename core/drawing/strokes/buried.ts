import type { LeadOut } from '../../model/things.ts';
import type { Stroke } from '../displayList.ts';
import { type Pen, paperPen, penStroke } from '../pen.ts';

/** Dashes of everything that lies buried. */
export const buriedDashMm = [1.4, 0.8] as const;

/** A lead-out: dashed where it is buried, thin where it is only planned. */
export function leadOutStroke({ buried, status }: Pick<LeadOut, 'buried' | 'status'>, pen: Pen = paperPen): Stroke {
  return penStroke(pen, status === 'built' ? 0.4 : 0.2, buried ? { dashMm: buriedDashMm } : {});
}

/** From near: a trench as it was measured, dashed; dots where nobody measured how it runs, or where it is only planned. */
export function trenchStroke(measured: boolean, pen: Pen = paperPen): Stroke {
  return measured ? penStroke(pen, 0.45, { dashMm: [2.2, 1.1] }) : penStroke(pen, 0.3, { dashMm: [0.5, 1.1] });
}
