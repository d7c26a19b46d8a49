/** Names as people count them: G2 before G10. */
export function inOrder(names: readonly string[]): string[] {
  return [...names].sort((a, b) => a.localeCompare(b, 'en', { numeric: true }));
}
