/** Does something when what is shown now has been painted: it must not keep the first picture waiting. */
export function oncePainted(then: () => void): void {
  requestAnimationFrame(() => setTimeout(then));
}
