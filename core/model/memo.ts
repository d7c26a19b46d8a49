/**
 * What has been worked out once, kept with the object that it was worked out from and gone with it. Things are never
 * changed, only replaced, so the same object stands for the same answer.
 */

/** A function that works out its answer once for each object. */
export function keptFor<K extends object, V>(make: (key: K) => V): (key: K) => V {
  const kept = new WeakMap<K, { readonly value: V }>();
  return (key) => {
    let known = kept.get(key);
    if (!known) {
      known = { value: make(key) };
      kept.set(key, known);
    }
    return known.value;
  };
}

/**
 * A function that keeps one answer with each object, its first argument, for as long as the others stay what they were
 * (the same objects, the same figures).
 */
export function keptWhile<K extends object, Rest extends readonly unknown[], V>(
  make: (key: K, ...rest: Rest) => V,
): (key: K, ...rest: Rest) => V {
  const kept = new WeakMap<K, { readonly rest: Rest; readonly value: V }>();
  return (key, ...rest) => {
    let known = kept.get(key);
    if (!known?.rest.every((part, i) => Object.is(part, rest[i]))) {
      known = { rest, value: make(key, ...rest) };
      kept.set(key, known);
    }
    return known.value;
  };
}

/**
 * A function of two objects that keeps an answer for every pair, for as long as the figures after them stay what they
 * were.
 */
export function keptForPair<A extends object, B extends object, Rest extends readonly unknown[], V>(
  make: (a: A, b: B, ...rest: Rest) => V,
): (a: A, b: B, ...rest: Rest) => V {
  const ofA = keptFor((a: A) => keptWhile((b: B, ...rest: Rest) => make(a, b, ...rest)));
  return (a, b, ...rest) => ofA(a)(b, ...rest);
}
