import { serviceFacts, serviceKinds } from '../../../core/model/serviceKinds.ts';
import type { PaddockName, Post, Service } from '../../../core/model/things.ts';
import { formatArea } from '../../../core/words/numbers/write.ts';
import { useOpenFile } from '../../state/appState.ts';
import { change } from '../../state/change.ts';
import { useUnits } from '../../state/useUnits.ts';
import { NumberField, SelectField, TextField } from '../parts/fields.tsx';

export function PostDetails({ post }: { readonly post: Post }) {
  const set = (label: string, patch: Partial<Omit<Post, 'kind' | 'id'>>) =>
    change(`${label} ${post.name}`, 'post', post.id, patch);
  return (
    <>
      <TextField label="Name" required value={post.name} onCommit={(name) => set('Rename', { name })} />
      <SelectField
        label="Role"
        value={post.role}
        hint="A switch may be set at a strainer; tapes are measured from any post."
        choices={[
          { value: 'strainer', label: 'Strainer' },
          { value: 'angle', label: 'Angle post' },
          { value: 'other', label: 'Other post that does not move' },
        ]}
        onCommit={(role) => set('Change the role of', { role })}
      />
      <TextField label="Note" long value={post.note} onCommit={(note) => set('Change the note of', { note })} />
    </>
  );
}

export function PaddockDetails({ paddock }: { readonly paddock: PaddockName }) {
  const { survey } = useOpenFile();
  const units = useUnits();
  const found = survey.paddocks.find(({ named }) => named?.id === paddock.id);
  const set = (label: string, patch: Partial<Omit<PaddockName, 'kind' | 'id'>>) =>
    change(`${label} ${paddock.name}`, 'paddock', paddock.id, patch);
  return (
    <>
      <p className="details-fact">
        {found ? (
          <>
            <span className="figure-value">{formatArea(found.areaM2, units)}</span> inside its fences
          </>
        ) : (
          'No fence closes it in now; the name is kept for when one does.'
        )}
      </p>
      <TextField label="Name" required value={paddock.name} onCommit={(name) => set('Rename', { name })} />
      <TextField label="Note" long value={paddock.note} onCommit={(note) => set('Change the note of', { note })} />
    </>
  );
}

export function ServiceDetails({ service }: { readonly service: Service }) {
  const set = (label: string, patch: Partial<Omit<Service, 'kind' | 'id'>>) =>
    change(`${label} ${service.name}`, 'service', service.id, patch);
  return (
    <>
      <TextField label="Name" required value={service.name} onCommit={(name) => set('Rename', { name })} />
      <SelectField
        label="What it is"
        value={service.what}
        choices={serviceKinds.map((value) => ({ value, label: serviceFacts[value].name }))}
        onCommit={(what) => set('Change', { what })}
      />
      {service.what === 'powerLine' ? (
        <NumberField
          label="Voltage"
          unit="V"
          decimals={0}
          optional
          max={1_000_000}
          value={service.voltageV}
          hint="The clearance depends on it: ask the line's owner."
          onCommit={(voltageV) => set('Change the voltage of', { voltageV })}
        />
      ) : null}
      {service.what === 'road' || service.what === 'path' ? (
        <SelectField
          label="Used by"
          value={service.open ?? 'unknown'}
          choices={[
            { value: 'unknown', label: 'Not noted' },
            { value: 'public', label: 'The public' },
            { value: 'private', label: 'This property only' },
          ]}
          onCommit={(open) => set('Change the use of', { open: open === 'unknown' ? null : open })}
        />
      ) : null}
      <TextField label="Note" long value={service.note} onCommit={(note) => set('Change the note of', { note })} />
    </>
  );
}
