/** Whether two values of plain data are the same, whatever the order of their fields. */
export function sameValue(a: unknown, b: unknown): boolean {
  if (Object.is(a, b) || a === b) return true;
  if (typeof a !== 'object' || typeof b !== 'object' || a === null || b === null) return false;
  if (Array.isArray(a) !== Array.isArray(b)) return false;
  const [fieldsA, fieldsB] = [Object.keys(a), Object.keys(b)];
  if (fieldsA.length !== fieldsB.length) return false;
  return fieldsA.every((field) => {
    return Object.hasOwn(b, field) && sameValue(a[field as keyof typeof a], b[field as keyof typeof b]);
  });
}
