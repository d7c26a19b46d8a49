import { type AppState, type Page, useApp } from '../state/appState.ts';
import { chooseFile } from '../state/chooseFile.ts';
import { deleteChosen } from '../state/deleteChosen.ts';
import { mapView } from '../state/mapView.ts';
import { redo, undo } from '../state/session.ts';
import { setTheme } from '../state/settings.ts';
import type { Command } from './command.ts';

const always = () => null;
const needsFile = (state: AppState) => (state.file ? null : 'Open a property first.');

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
    label: 'Undo',
    key: 'Ctrl+Z',
    whyNot: (state) => needsFile(state) ?? (state.file?.state.undo ? null : 'There is nothing to take back.'),
    run: () => void undo(),
  },
  {
    id: 'redo',
    label: 'Redo',
    key: 'Ctrl+Shift+Z',
    whyNot: (state) => needsFile(state) ?? (state.file?.state.redo ? null : 'Nothing was taken back.'),
    run: () => void redo(),
  },
  { id: 'newProperty', label: 'New property', key: 'Ctrl+Alt+N', whyNot: always, run: () => void chooseFile('new') },
  { id: 'openProperty', label: 'Open a property', key: 'Ctrl+O', whyNot: always, run: () => void chooseFile('open') },
  {
    id: 'saveCopy',
    label: 'Save a copy and go on in it',
    key: 'Ctrl+Shift+S',
    whyNot: needsFile,
    run: () => void chooseFile('copy'),
  },
  {
    id: 'print',
    label: 'Print map sheets',
    key: 'Ctrl+P',
    whyNot: needsFile,
    run: () => useApp.setState({ dialog: { kind: 'print' } }),
  },
  {
    id: 'pack',
    label: 'Make the handover pack',
    key: 'Ctrl+Shift+P',
    whyNot: needsFile,
    run: () => useApp.setState({ dialog: { kind: 'pack' } }),
  },
  { id: 'cover', label: 'Open the cover', key: 'Alt+0', whyNot: always, run: goTo('cover') },
  { id: 'draw', label: 'Draw', key: 'Alt+1', whyNot: needsFile, run: goTo('draw') },
  { id: 'divide', label: 'Divide', key: 'Alt+2', whyNot: needsFile, run: goTo('divide') },
  { id: 'power', label: 'Power', key: 'Alt+3', whyNot: needsFile, run: goTo('power') },
  { id: 'order', label: 'Order', key: 'Alt+4', whyNot: needsFile, run: goTo('order') },
  { id: 'printOrder', label: 'Print the order', whyNot: needsFile, run: orderFile('printOrder') },
  { id: 'orderCsv', label: 'Order as CSV', whyNot: needsFile, run: orderFile('saveOrderCsv') },
  { id: 'quantitiesCsv', label: 'Quantities as CSV', whyNot: needsFile, run: orderFile('saveQuantitiesCsv') },
  { id: 'cutListsCsv', label: 'Cut lists as CSV', whyNot: needsFile, run: orderFile('saveCutListsCsv') },
  { id: 'priceListCsv', label: 'Price list as CSV', whyNot: needsFile, run: orderFile('savePriceListCsv') },
  { id: 'record', label: 'Record', key: 'Alt+5', whyNot: needsFile, run: goTo('record') },
  { id: 'find', label: 'Find', key: 'Alt+6', whyNot: needsFile, run: goTo('find') },
  { id: 'toMap', label: 'Go to the map', key: 'Alt+M', whyNot: needsFile, run: () => mapView.focus() },
  {
    id: 'goToPlace',
    label: 'Go to coordinates',
    key: 'Alt+G',
    whyNot: needsFile,
    run: () => mapView.askForPlace(),
  },
  { id: 'fit', label: 'See the whole property', key: 'Alt+W', whyNot: needsFile, run: () => mapView.fit() },
  {
    id: 'delete',
    label: 'Delete what is chosen',
    key: 'Ctrl+Delete',
    whyNot: (state) => needsFile(state) ?? (state.chosen.length > 0 ? null : 'Choose something first.'),
    run: () => void deleteChosen(),
  },
  {
    id: 'keys',
    label: 'List of keys',
    key: 'F1',
    whyNot: always,
    run: () => useApp.setState({ dialog: { kind: 'keys' } }),
  },
  {
    id: 'theme',
    label: 'Light or dark',
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
