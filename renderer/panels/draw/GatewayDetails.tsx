import { setGatewayWidth } from '../../../core/model/edits/setGatewayWidth.ts';
import type { Gateway, LineEnd } from '../../../core/model/things.ts';
import { formatRound } from '../../../core/words/numbers/write.ts';
import { useOpenFile } from '../../state/appState.ts';
import { change } from '../../state/change.ts';
import { commit } from '../../state/session.ts';
import { useUnits } from '../../state/useUnits.ts';
import { CheckField, SelectField, TextField } from '../parts/fields.tsx';
import { LengthField } from '../parts/LengthField.tsx';
import { StatusField } from '../parts/StatusField.tsx';
import { CrossingDetails } from './CrossingDetails.tsx';

export function GatewayDetails({ gateway }: { readonly gateway: Gateway }) {
  const { survey } = useOpenFile();
  const set = (label: string, patch: Partial<Omit<Gateway, 'kind' | 'id'>>) =>
    change(`${label} ${gateway.name}`, 'gateway', gateway.id, patch);
  const units = useUnits();
  const line = survey.lines.get(gateway.lineId)?.line;
  return (
    <>
      <TextField label="Name" required value={gateway.name} onCommit={(name) => set('Rename', { name })} />
      <LengthField
        label="Width, post to post"
        valueM={gateway.widthM}
        minM={0.5}
        maxM={60}
        hint={`In fence ${line?.name ?? 'not known'}. Ordinary gates are ${formatRound(3.6, units)} to ${formatRound(4.9, units)}, doubled for machinery (common practice).`}
        onCommitM={(widthM) => {
          if (widthM !== null) {
            void commit(`Change the width of ${gateway.name}`, setGatewayWidth({ gatewayId: gateway.id, widthM }));
          }
        }}
      />
      <StatusField status={gateway.status} onCommit={(status) => set(`Mark ${status}:`, { status })} />
      <CrossingDetails gateway={gateway} />
      <section className="crossing" aria-label="The gate">
        <h3>The gate</h3>
        <div className="field-pair">
          <SelectField
            label="Leaves"
            value={String(gateway.leaves) as '1' | '2'}
            choices={[
              { value: '1', label: 'Single' },
              { value: '2', label: 'Double' },
            ]}
            onCommit={(leaves) => set('Change the leaves of', { leaves: leaves === '2' ? 2 : 1 })}
          />
          <SelectField<LineEnd>
            label="Hung from"
            value={gateway.hungFrom}
            choices={[
              { value: 'start', label: 'Start post' },
              { value: 'end', label: 'End post' },
            ]}
            onCommit={(hungFrom) => set('Rehang', { hungFrom })}
          />
        </div>
        <SelectField
          label="Swings to"
          hint="The line's start post is the one nearer to where the line was begun."
          value={gateway.opens}
          choices={[
            { value: 'left', label: 'Left, looking along the line' },
            { value: 'right', label: 'Right, looking along the line' },
          ]}
          onCommit={(opens) => set('Change the swing of', { opens })}
        />
        <CheckField
          label="Vehicles pass here"
          value={gateway.vehicles}
          hint="The trench goes deeper: 450 to 600 mm (common practice)."
          onCommit={(vehicles) => set('Change the use of', { vehicles })}
        />
        <TextField label="Note" long value={gateway.note} onCommit={(note) => set('Change the note of', { note })} />
      </section>
    </>
  );
}
