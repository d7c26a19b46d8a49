/**
 * Keys for the map: those pressed while it, or nothing in particular, has the keyboard. With Ctrl, Command or Alt they
 * belong to the window's commands, but for undo, which first takes back what is begun on the map. `onKey` tells whether
 * it used the key. Returns what stops it.
 */
export function listenToKeys(stage: HTMLElement, onKey: (event: KeyboardEvent) => boolean): () => void {
  const heard = (event: KeyboardEvent) => {
    if (event.defaultPrevented || (event.altKey && event.key !== 'Enter')) return;
    if ((event.ctrlKey || event.metaKey) && !event.key.startsWith('Arrow') && !isUndo(event)) return;
    const { activeElement } = document;
    if (activeElement !== stage && activeElement !== document.body && activeElement !== null) return;
    // Tab belongs to the map only while it has the keyboard itself.
    if (event.key === 'Tab' && activeElement !== stage) return;
    if (onKey(event)) event.preventDefault();
  };
  document.addEventListener('keydown', heard);
  return () => document.removeEventListener('keydown', heard);
}

export function isUndo({ key, ctrlKey, metaKey, shiftKey }: KeyboardEvent): boolean {
  return (ctrlKey || metaKey) && !shiftKey && key.toLowerCase() === 'z';
}
