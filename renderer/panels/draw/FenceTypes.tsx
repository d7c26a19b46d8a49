import { missingPlainWires } from '../../../core/checks/drawing/plainWiresNotEntered.ts';
import { newFenceType } from '../../../core/model/defaults.ts';
import { addThing } from '../../../core/model/edits/addThing.ts';
import { setPlainWire } from '../../../core/model/edits/setPlainWire.ts';
import type { FenceType } from '../../../core/model/things.ts';
import { message } from '../../../core/words/message.ts';
import { useOpenFile } from '../../state/appState.ts';
import { change } from '../../state/change.ts';
import { choose } from '../../state/choose.ts';
import { newId } from '../../state/newId.ts';
import { commit } from '../../state/session.ts';
import { useFigures } from '../../state/useFigures.ts';
import { SelectField } from '../parts/fields.tsx';
import { KindField, KindFields } from '../parts/KindField.tsx';
import { Register } from '../parts/Register.tsx';
import { useConductorChoices } from './useConductorChoices.ts';

/** The property's fence types; the chosen one is edited in the details above. */
export function FenceTypes() {
  const { project } = useOpenFile();
  const add = () => {
    const id = newId('fenceType');
    const { id: _, ...type } = newFenceType(id, 'New fence type');
    void commit(
      'Add a fence type',
      addThing(type, () => id),
      { choose: [id] },
    );
  };
  return (
    <>
      <Register<FenceType>
        caption="Fence types"
        rows={[...project.fenceType.values()]}
        idOf={({ id }) => id}
        empty="No fence types."
        columns={[
          { title: 'Name', cell: ({ name }) => name, sortBy: ({ name }) => name },
          { title: 'Live', figures: true, cell: ({ liveWires }) => liveWires, sortBy: ({ liveWires }) => liveWires },
          {
            title: 'Earth',
            figures: true,
            cell: ({ earthWires }) => earthWires,
            sortBy: ({ earthWires }) => earthWires,
          },
          {
            title: 'Plain',
            figures: true,
            cell: ({ plainWires }) => plainWires ?? '?',
            sortBy: ({ plainWires }) => plainWires ?? -1,
          },
          {
            title: 'Barbed',
            figures: true,
            cell: ({ barbedWires }) => barbedWires,
            sortBy: ({ barbedWires }) => barbedWires,
          },
        ]}
      />
      <p className="buttons">
        <button type="button" onClick={add}>
          Add a fence type
        </button>
        <button type="button" className="plain" onClick={() => choose([])}>
          Choose nothing
        </button>
      </p>
    </>
  );
}

export function FenceTypeDetails({ type }: { readonly type: FenceType }) {
  const liveWires = useConductorChoices('wire', type.wireId);
  const plainWires = useConductorChoices('wire', type.plainWireId);
  const set = (label: string, patch: Partial<Omit<FenceType, 'kind' | 'id'>>) =>
    change(label, 'fenceType', type.id, patch);
  const f = useFigures();
  const missing = missingPlainWires(type);
  return (
    <>
      <KindField thing={type} field="name" step="Rename the fence type" />
      <div className="field-pair">
        <KindField thing={type} field="liveWires" step="Change the live wires" />
        <KindField thing={type} field="earthWires" step="Change the earth wires" />
      </div>
      <div className="field-pair">
        <KindField
          thing={type}
          field="plainWires"
          onCommit={(wires) => set('Change the plain wires', { plainWires: wires ?? 0 })}
        />
        <KindField thing={type} field="barbedWires" step="Change the barbed wires" />
      </div>
      <p className={missing ? 'field-problem' : 'field-hint'}>
        {missing
          ? f.say(message('checks.plainWiresNotEntered.hint', missing))
          : 'Plain wires are dead: ordered, strained and stapled like the others. Barbed wire is counted for itself and never electrified.'}
      </p>
      <KindField thing={type} field="postSpacingM" step="Change the post spacing" />
      <SelectField
        label="Live wire"
        value={type.wireId}
        choices={liveWires}
        onCommit={(wireId) => set('Change the live wire', { wireId })}
      />
      <SelectField
        label="Earth and plain wire"
        value={type.plainWireId ?? ''}
        choices={[{ value: '', label: 'The same as the live wire' }, ...plainWires]}
        onCommit={(id) =>
          void commit(
            'Change the earth and plain wire',
            setPlainWire({ typeId: type.id, wireId: id === '' ? null : id }),
          )
        }
      />
      <KindFields thing={type} except={placed} />
    </>
  );
}

/** Fields that have a place of their own in the form. */
const placed = ['name', 'liveWires', 'earthWires', 'plainWires', 'barbedWires', 'postSpacingM'] as const;
