import { propertyOf } from '../../../core/model/project.ts';
import { commands } from '../../commands/commands.ts';
import { mapKeys, toolsOf } from '../../map/mapTypes.ts';
import { useApp } from '../../state/appState.ts';
import { DialogFrame } from './DialogFrame.tsx';

export function KeysDialog() {
  const units = useApp(({ file }) => (file ? propertyOf(file.project).units : 'metric'));
  return (
    <DialogFrame title="Keys">
      <KeyTable
        title="Everywhere"
        rows={commands.flatMap(({ key, label }) => (key === undefined ? [] : [[key, label] as const]))}
      />
      <KeyTable
        title="Tools, while the map has the keyboard"
        rows={[
          ...[...toolsOf.draw, ...toolsOf.divide.slice(1)].map(({ key, label }) => [key, label] as const),
          ['S', 'In Draw, while the inspector is open at Services: the service chosen there'],
        ]}
      />
      <KeyTable title="On the map" rows={mapKeys(units).map(({ keys, does }) => [keys, does] as const)} />
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
          <tr key={key}>
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
