import { useApp } from './appState.ts';

/** Chooses these things, in the inspector and on the map; `additive` adds them to, or takes them from, what is chosen. */
export function choose(ids: readonly string[], additive = false): void {
  useApp.setState(({ chosen }) => {
    if (!additive) return { chosen: ids };
    const kept = chosen.filter((id) => !ids.includes(id));
    return { chosen: kept.length < chosen.length ? kept : [...chosen, ...ids] };
  });
}

/** Says which thing is under the pointer (null: none). */
export function point(id: string | null): void {
  if (useApp.getState().pointed !== id) useApp.setState({ pointed: id });
}

/** Marks the pieces that make up a figure. */
export function light(ids: readonly string[]): void {
  useApp.setState({ lit: ids });
}

/** Writes the last line of the inspector. */
export function say(text: string, kind: 'done' | 'refused'): void {
  useApp.setState({ lastLine: { text, kind } });
}
