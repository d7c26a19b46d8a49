import { useApp } from '../../state/appState.ts';
import { lazyPart } from '../lazyPart.tsx';

const ChooseFileDialog = lazyPart(async () => (await import('./ChooseFileDialog.tsx')).ChooseFileDialog);
const ChooseTileFileDialog = lazyPart(
  async () => (await import('../underlay/ChooseTileFileDialog.tsx')).ChooseTileFileDialog,
);
const ImportDialog = lazyPart(async () => (await import('../exchange/ImportDialog.tsx')).ImportDialog);
const KeysDialog = lazyPart(async () => (await import('./KeysDialog.tsx')).KeysDialog);
const PackDialog = lazyPart(async () => (await import('../record/PackDialog.tsx')).PackDialog);
const PrintDialog = lazyPart(async () => (await import('./PrintDialog.tsx')).PrintDialog);

/** The dialog that is open, if any. */
export function Dialogs() {
  const dialog = useApp((state) => state.dialog);
  switch (dialog?.kind) {
    case 'chooseFile':
      return <ChooseFileDialog purpose={dialog.purpose} />;
    case 'chooseTileFile':
      return <ChooseTileFileDialog />;
    case 'print':
      return <PrintDialog />;
    case 'importMap':
      return <ImportDialog fileName={dialog.fileName} bytes={dialog.bytes} />;
    case 'pack':
      return <PackDialog />;
    case 'keys':
      return <KeysDialog />;
    default:
      return null;
  }
}
