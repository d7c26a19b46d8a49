/** JSON as a value; undefined, which no record is, for what is no JSON. */
export function parsed(json: string): unknown {
  try {
    return JSON.parse(json);
  } catch {
    return undefined;
  }
}
