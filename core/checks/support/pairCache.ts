import type { Xy } from '../../geometry/types.ts';

type Path = readonly Xy[];
type OfPair<T> = (a: Path, b: Path, figureM: number) => T;

/**
 * The same function, with its answers kept as long as both paths live: after an edit only pairs with a path that
 * changed are worked out again.
 */
export function keptForPair<T>(make: OfPair<T>): OfPair<T> {
  const kept = new WeakMap<Path, WeakMap<Path, Map<number, T>>>();
  return (a, b, figureM) => {
    let ofA = kept.get(a);
    if (!ofA) {
      ofA = new WeakMap();
      kept.set(a, ofA);
    }
    let ofPair = ofA.get(b);
    if (!ofPair) {
      ofPair = new Map();
      ofA.set(b, ofPair);
    }
    let value = ofPair.get(figureM);
    if (value === undefined) {
      value = make(a, b, figureM);
      ofPair.set(figureM, value);
    }
    return value;
  };
}
