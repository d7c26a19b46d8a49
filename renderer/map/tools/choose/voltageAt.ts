import { nearestOnPolyline } from '../../../../core/geometry/polyline.ts';
import type { Xy } from '../../../../core/geometry/types.ts';
import { plainWords } from '../../../../core/words/figures.ts';
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
  const words = plainWords().window.map.voltage;
  if (volts === null) return words.notKnownHere({ line: name });
  if (volts === 0) return words.deadHere({ line: name });
  const { minimumV } = voltage;
  return volts < minimumV ? words.lowHere({ line: name, volts, minimumV }) : words.here({ line: name, volts });
}

function alongM({ xy, fromM, toM }: PiecePart, at: Xy): number {
  const nearest = nearestOnPolyline(at, xy);
  const last = xy.at(-1);
  const whole = last && nearestOnPolyline(last, xy)?.stationM;
  return nearest && whole ? (nearest.stationM / whole) * (toM - fromM) : 0;
}
