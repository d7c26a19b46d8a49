import { byName } from '../../../core/words/text.ts';
import { useOpenFile } from '../../state/appState.ts';
import { useWords } from '../../state/useFigures.ts';
import { CheckField } from '../parts/fields.tsx';

/** Which switches stood open while something was read. */
export function OpenSwitches({
  open,
  onChange,
}: {
  readonly open: readonly string[];
  readonly onChange: (open: readonly string[]) => void;
}) {
  const { project } = useOpenFile();
  const words = useWords().window.power.readings;
  const switches = [...project.switch.values()].sort(byName);
  if (switches.length === 0) return null;
  const names = switches.filter(({ id }) => open.includes(id)).map(({ name }) => name);
  return (
    <details className="legs">
      <summary>{names.length > 0 ? words.switchesOff({ names }) : words.noneOff}</summary>
      <div className="open-switches">
        {switches.map(({ id, name }) => (
          <CheckField
            key={id}
            label={name}
            value={open.includes(id)}
            onCommit={(isOpen) => onChange(isOpen ? [...open, id] : open.filter((other) => other !== id))}
          />
        ))}
      </div>
    </details>
  );
}
