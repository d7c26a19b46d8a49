import { nearestOnPolyline } from '../../../../core/geometry/polyline.ts';
import type { Xy } from '../../../../core/geometry/types.ts';
import { formatVoltage } from '../../../../core/words/numbers/write.ts';
import type { MapInput } from '../../mapTypes.ts';
import type { Scene } from '../../scene/buildScene.ts';
import type { PiecePart } from '../../scene/parts.ts';
import { pick } from '../../scene/pick.ts';

/** What the live fence under a point reads, in a sentence; null where there is none or no voltages are shown. */
export function voltageAt(scene: Scene, { voltage, chosen }: MapInput, at: Xy, pxPerM: number): string | null {
  if (!voltage) return null;
  const piece = pick(scene, at, pxPerM, chosen)
    .map(({ part }) => part)
    .find((part): part is PiecePart => part.kind === 'piece' && part.edge >= 0);
  if (!piece) return null;
  const { name } = piece.shape.line;
  const volts = voltage.along(piece.edge, alongM(piece, at));
  if (volts === null) return `${name}: the voltage is not known.`;
  if (volts === 0) return `${name}: dead, 0 V.`;
  const low = volts < voltage.minimumV ? `, under the ${formatVoltage(voltage.minimumV)} that hold the stock` : '';
  return `${name}: about ${formatVoltage(volts)} here (estimate)${low}.`;
}

function alongM({ xy, fromM, toM }: PiecePart, at: Xy): number {
  const nearest = nearestOnPolyline(at, xy);
  const last = xy.at(-1);
  const whole = last && nearestOnPolyline(last, xy)?.stationM;
  return nearest && whole ? (nearest.stationM / whole) * (toM - fromM) : 0;
}
