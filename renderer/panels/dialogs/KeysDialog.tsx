import { commands } from '../../commands/commands.ts';
import { toolsOf } from '../../map/mapTypes.ts';
import { DialogFrame } from './DialogFrame.tsx';

/** Keys of the map; while it has the keyboard. */
const mapKeys: readonly (readonly [string, string])[] = [
  ['Arrow keys', 'Move the cross, or the chosen vertex or thing by 0.1 m (with Shift: 1 m)'],
  ['Enter', 'Click at the cross'],
  ['0 to 9', 'Type a length, Tab, a bearing, Enter: the next vertex of the fence'],
  ['Backspace', 'Take back the last vertex'],
  ['Escape', 'Leave off drawing'],
  ['+ and -', 'Nearer, farther'],
];

export function KeysDialog() {
  return (
    <DialogFrame title="Keys">
      <KeyTable
        title="Everywhere"
        rows={commands.flatMap(({ key, label }) => (key === undefined ? [] : [[key, label] as const]))}
      />
      <KeyTable
        title="Tools, while the map has the keyboard"
        rows={[...toolsOf.draw, ...toolsOf.divide.slice(1)].map(({ key, label }) => [key, label] as const)}
      />
      <KeyTable title="On the map" rows={mapKeys} />
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
