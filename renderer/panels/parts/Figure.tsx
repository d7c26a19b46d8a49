import type { MapId } from '../../map/mapTypes.ts';
import { light } from '../../state/choose.ts';

/** A total with its name. Pointing at it, or reaching it by keyboard, marks the pieces that make it up on the map. */
export function Figure({
  label,
  value,
  pieces = [],
}: {
  readonly label: string;
  readonly value: string;
  readonly pieces?: readonly MapId[];
}) {
  if (pieces.length === 0) {
    return (
      <div className="figure">
        <span className="figure-value">{value}</span>
        <span className="figure-label">{label}</span>
      </div>
    );
  }
  return (
    <button
      type="button"
      className="figure"
      onPointerEnter={() => light(pieces)}
      onPointerLeave={() => light([])}
      onFocus={() => light(pieces)}
      onBlur={() => light([])}
    >
      <span className="figure-value">{value}</span>
      <span className="figure-label">{label}</span>
    </button>
  );
}
