/** The day that was given, at noon where it has no time; the beginning of time for a date that is none. */
export function madeAt(iso: string): Date {
  const at = new Date(/^\d{4}-\d{2}-\d{2}$/.test(iso) ? `${iso}T12:00:00Z` : iso);
  return Number.isNaN(at.getTime()) ? new Date(0) : at;
}
