import { useApp } from '../state/appState.ts';
import type { Command } from './command.ts';
import { commands } from './commands.ts';

/** Whether `event` is the key that `spec` names ("Ctrl+Shift+Z"); the command key serves for Ctrl. */
export function isKey(
  spec: string,
  event: Pick<KeyboardEvent, 'key' | 'code' | 'ctrlKey' | 'metaKey' | 'shiftKey' | 'altKey'>,
): boolean {
  const parts = spec.split('+');
  const name = parts.pop()!.toLowerCase();
  if ((event.ctrlKey || event.metaKey) !== parts.includes('Ctrl')) return false;
  if (event.shiftKey !== parts.includes('Shift') || event.altKey !== parts.includes('Alt')) return false;
  // With Alt held some systems type another letter, so the key's place counts too.
  return event.key.toLowerCase() === name || event.code.toLowerCase() === keyCode(name);
}

function keyCode(name: string): string {
  if (/^[a-z]$/.test(name)) return `key${name}`;
  return /^\d$/.test(name) ? `digit${name}` : name;
}

/** Runs the command whose key was pressed. While a dialog is open only its own keys count. */
export function onWindowKey(event: KeyboardEvent): void {
  if (event.defaultPrevented || useApp.getState().dialog) return;
  const command = commands.find(({ key }) => key !== undefined && isKey(key, event));
  if (!command || (isTyping(event) && undoKeys.has(command.id))) return;
  event.preventDefault();
  runCommand(command);
}

/** In a text field these keys belong to the text. */
const undoKeys: ReadonlySet<string> = new Set(['undo', 'redo', 'delete']);

function isTyping(event: KeyboardEvent): boolean {
  const { target } = event;
  return (
    target instanceof HTMLElement &&
    (target.isContentEditable ||
      target instanceof HTMLTextAreaElement ||
      (target instanceof HTMLInputElement && !['checkbox', 'radio', 'button'].includes(target.type)))
  );
}

/** Runs a command, or says why it can't be. */
export function runCommand(command: Command): void {
  const why = command.whyNot(useApp.getState());
  if (why === null) command.run();
  else useApp.setState({ lastLine: { kind: 'refused', text: why } });
}
