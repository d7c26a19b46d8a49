import type { CutOutSwitch } from '../../../core/model/things.ts';
import { cutsOffSentence, feedSentence } from '../../../core/survey/switchInWords.ts';
import { useOpenFile } from '../../state/appState.ts';
import { change } from '../../state/change.ts';
import { useUnits } from '../../state/useUnits.ts';
import { CheckField, SelectField, TextField } from '../parts/fields.tsx';
import { StatusField } from '../parts/StatusField.tsx';

export function SwitchDetails({ cutOut }: { readonly cutOut: CutOutSwitch }) {
  const { project, survey } = useOpenFile();
  const units = useUnits();
  const row = survey.switches.find(({ switch: { id } }) => id === cutOut.id);
  const set = (label: string, patch: Partial<Omit<CutOutSwitch, 'kind' | 'id'>>) =>
    change(`${label} ${cutOut.name}`, 'switch', cutOut.id, patch);
  return (
    <>
      <p className="details-fact">{row?.placeText ?? 'It stands on no live fence.'}</p>
      {row ? (
        <p>
          {feedSentence(row.feed)} {cutsOffSentence(row, project, units)}
        </p>
      ) : null}
      {row?.wrongSide ? (
        <p className="field-problem">
          It stands on the far side of its crossing: the buried cable stays live when it is opened. Move it to the
          supply side.
        </p>
      ) : null}
      <TextField label="Label" required value={cutOut.name} onCommit={(name) => set('Rename', { name })} />
      <SelectField
        label="Normally"
        value={cutOut.normally}
        choices={[
          { value: 'closed', label: 'Closed' },
          { value: 'open', label: 'Open' },
        ]}
        onCommit={(normally) => set(`Leave ${normally}:`, { normally })}
      />
      <CheckField
        label="Pinned: the plan keeps it"
        value={cutOut.pinned}
        onCommit={(pinned) => set(pinned ? 'Pin' : 'Unpin', { pinned })}
      />
      <StatusField status={cutOut.status} onCommit={(status) => set(`Mark ${status}:`, { status })} />
      <TextField label="Note" long value={cutOut.note} onCommit={(note) => set('Change the note of', { note })} />
    </>
  );
}
