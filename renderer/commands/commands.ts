import { plainWords } from '../../core/words/figures.ts';
import { type AppState, type Page, useApp } from '../state/appState.ts';
import { chooseFile } from '../state/chooseFile.ts';
import { deleteChosen } from '../state/deleteChosen.ts';
import { mapView } from '../state/mapView.ts';
import { redo, undo } from '../state/session.ts';
import { setTheme } from '../state/settings.ts';
import type { Command } from './command.ts';

const always = () => null;
const words = () => plainWords().window.frame.commands;
const needsFile = (state: AppState) => (state.file ? null : words().whyNot.noProperty);

function goTo(page: Page): Command['run'] {
  return () => useApp.setState({ page, lit: [], pointed: null });
}

/** The writing of orders is fetched when one is written. */
function orderFile(
  what: 'printOrder' | 'saveOrderCsv' | 'saveQuantitiesCsv' | 'saveCutListsCsv' | 'savePriceListCsv',
): Command['run'] {
  return () => void import('../state/orderFiles.ts').then((files) => files[what]());
}

const list = [
  {
    id: 'undo',
    key: 'Ctrl+Z',
    whyNot: (state) => needsFile(state) ?? (state.file?.state.undo ? null : words().whyNot.nothingToUndo),
    run: () => void undo(),
  },
  {
    id: 'redo',
    key: 'Ctrl+Shift+Z',
    whyNot: (state) => needsFile(state) ?? (state.file?.state.redo ? null : words().whyNot.nothingUndone),
    run: () => void redo(),
  },
  { id: 'newProperty', key: 'Ctrl+Alt+N', whyNot: always, run: () => void chooseFile('new') },
  { id: 'openProperty', key: 'Ctrl+O', whyNot: always, run: () => void chooseFile('open') },
  {
    id: 'saveCopy',
    key: 'Ctrl+Shift+S',
    whyNot: needsFile,
    run: () => void chooseFile('copy'),
  },
  {
    id: 'print',
    key: 'Ctrl+P',
    whyNot: needsFile,
    run: () => useApp.setState({ dialog: { kind: 'print' } }),
  },
  {
    id: 'pack',
    key: 'Ctrl+Shift+P',
    whyNot: needsFile,
    run: () => useApp.setState({ dialog: { kind: 'pack' } }),
  },
  { id: 'cover', key: 'Alt+0', whyNot: always, run: goTo('cover') },
  { id: 'draw', key: 'Alt+1', whyNot: needsFile, run: goTo('draw') },
  { id: 'divide', key: 'Alt+2', whyNot: needsFile, run: goTo('divide') },
  { id: 'power', key: 'Alt+3', whyNot: needsFile, run: goTo('power') },
  { id: 'order', key: 'Alt+4', whyNot: needsFile, run: goTo('order') },
  { id: 'printOrder', whyNot: needsFile, run: orderFile('printOrder') },
  { id: 'orderCsv', whyNot: needsFile, run: orderFile('saveOrderCsv') },
  { id: 'quantitiesCsv', whyNot: needsFile, run: orderFile('saveQuantitiesCsv') },
  { id: 'cutListsCsv', whyNot: needsFile, run: orderFile('saveCutListsCsv') },
  { id: 'priceListCsv', whyNot: needsFile, run: orderFile('savePriceListCsv') },
  { id: 'record', key: 'Alt+5', whyNot: needsFile, run: goTo('record') },
  { id: 'find', key: 'Alt+6', whyNot: needsFile, run: goTo('find') },
  { id: 'toMap', key: 'Alt+M', whyNot: needsFile, run: () => mapView.focus() },
  {
    id: 'goToPlace',
    key: 'Alt+G',
    whyNot: needsFile,
    run: () => mapView.askForPlace(),
  },
  { id: 'fit', key: 'Alt+W', whyNot: needsFile, run: () => mapView.fit() },
  {
    id: 'delete',
    key: 'Ctrl+Delete',
    whyNot: (state) => needsFile(state) ?? (state.chosen.length > 0 ? null : words().whyNot.nothingSelected),
    run: () => void deleteChosen(),
  },
  {
    id: 'keys',
    key: 'F1',
    whyNot: always,
    run: () => useApp.setState({ dialog: { kind: 'keys' } }),
  },
  {
    id: 'theme',
    key: 'Alt+L',
    whyNot: always,
    run: () => setTheme(useApp.getState().theme === 'light' ? 'dark' : 'light'),
  },
] as const satisfies readonly Command[];

export type CommandId = (typeof list)[number]['id'];

export const commands: readonly Command[] = list;

export function commandOf(id: CommandId): Command {
  return commands.find((command) => command.id === id)!;
}

/** What it is called on buttons and in the list of keys. */
export function labelOf({ id }: Command): string {
  return words().labels[id as CommandId];
}

/** Its key as the keyboard has it: "Ctrl+Z". */
export function keyText(key: string): string {
  const { keys } = words();
  return key
    .split('+')
    .map((part) => (Object.hasOwn(keys, part) ? keys[part as keyof typeof keys] : part))
    .join('+');
}
