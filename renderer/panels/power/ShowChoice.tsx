import { byName } from '../../../core/words/text.ts';
import { useApp, useOpenFile } from '../../state/appState.ts';
import { useWords } from '../../state/useFigures.ts';
import { SelectField } from '../parts/fields.tsx';
import { usePower } from './usePower.ts';

/** How the switches stand in what is shown; nothing in the drawing changes. */
export function ShowChoice() {
  const { project, survey } = useOpenFile();
  const { power } = usePower();
  const shownOpen = useApp((state) => state.shownOpen);
  const words = useWords().window.power.show;
  const { normallyOpen } = power;
  const inNetwork = [...project.switch.values()].filter(({ id }) => survey.network.edgeOfSwitch.has(id));
  if (inNetwork.length === 0) return null;
  return (
    <div className="block">
      <SelectField
        label={words.label}
        hint={words.hint}
        value={shownValue(shownOpen, normallyOpen)}
        choices={[
          {
            value: 'normal',
            label: normallyOpen.size === 0 ? words.allOn : words.normal,
          },
          ...(normallyOpen.size > 0 ? [{ value: 'closed', label: words.allOn }] : []),
          ...inNetwork.sort(byName).map(({ id, name }) => ({
            value: `throw:${id}`,
            label: normallyOpen.has(id) ? words.withOn({ name }) : words.withOff({ name }),
          })),
        ]}
        onCommit={(value) => {
          if (value === 'normal') useApp.setState({ shownOpen: null });
          else if (value === 'closed') useApp.setState({ shownOpen: [] });
          else useApp.setState({ shownOpen: thrown(value.slice('throw:'.length), normallyOpen) });
        }}
      />
    </div>
  );
}

/** The switches that stand open once this one is thrown and all others stand as they normally do. */
export function thrown(id: string, normallyOpen: ReadonlySet<string>): readonly string[] {
  return normallyOpen.has(id) ? [...normallyOpen].filter((other) => other !== id) : [...normallyOpen, id];
}

function shownValue(shownOpen: readonly string[] | null, normallyOpen: ReadonlySet<string>): string {
  if (shownOpen === null) return 'normal';
  const opened = shownOpen.find((id) => !normallyOpen.has(id));
  if (opened !== undefined) return `throw:${opened}`;
  if (shownOpen.length === 0 && normallyOpen.size !== 1) return 'closed';
  const closed = [...normallyOpen].find((id) => !shownOpen.includes(id));
  return closed === undefined ? 'normal' : `throw:${closed}`;
}
