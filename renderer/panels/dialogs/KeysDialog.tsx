import { propertyOf } from '../../../core/model/project.ts';
import { commands, keyText, labelOf } from '../../commands/commands.ts';
import { mapKeys, toolKeys } from '../../map/mapTypes.ts';
import { useApp } from '../../state/appState.ts';
import { useWords } from '../../state/useFigures.ts';
import { DialogFrame } from './DialogFrame.tsx';

export function KeysDialog() {
  const { keys: words } = useWords().window.frame.dialogs;
  const units = useApp(({ file }) => (file ? propertyOf(file.project).units : 'metric'));
  return (
    <DialogFrame title={words.title}>
      <KeyTable
        title={words.everywhere}
        rows={commands.flatMap((command) =>
          command.key === undefined ? [] : [[keyText(command.key), labelOf(command)] as const],
        )}
      />
      <KeyTable
        title={words.tools}
        rows={[...toolKeys().map(({ key, does }) => [key, does] as const), ['S', words.service]]}
      />
      <KeyTable title={words.map} rows={mapKeys(units).map(({ keys, does }) => [keys, does] as const)} />
    </DialogFrame>
  );
}

function KeyTable({
  title,
  rows,
}: {
  readonly title: string;
  readonly rows: readonly (readonly [key: string, meaning: string])[];
}) {
  return (
    <table className="keys">
      <caption>{title}</caption>
      <tbody>
        {rows.map(([key, meaning]) => (
          <tr key={meaning}>
            <th scope="row">
              <kbd>{key}</kbd>
            </th>
            <td>{meaning}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
