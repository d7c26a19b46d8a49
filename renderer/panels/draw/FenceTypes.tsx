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
import { useFigures, useWords } from '../../state/useFigures.ts';
import { SelectField } from '../parts/fields.tsx';
import { KindField, KindFields } from '../parts/KindField.tsx';
import { Register } from '../parts/Register.tsx';
import { useConductorChoices } from './useConductorChoices.ts';

/** The property's fence types; the chosen one is edited in the details above. */
export function FenceTypes() {
  const { project } = useOpenFile();
  const words = useWords().window.draw.fenceTypes;
  const add = () => {
    const id = newId('fenceType');
    const { id: _, ...type } = newFenceType(id, words.newName);
    void commit(
      words.add,
      addThing(type, () => id),
      { choose: [id] },
    );
  };
  return (
    <>
      <Register<FenceType>
        caption={words.caption}
        rows={[...project.fenceType.values()]}
        idOf={({ id }) => id}
        empty={words.none}
        columns={[
          { title: words.name, cell: ({ name }) => name, sortBy: ({ name }) => name },
          {
            title: words.live,
            figures: true,
            cell: ({ liveWires }) => liveWires,
            sortBy: ({ liveWires }) => liveWires,
          },
          {
            title: words.earth,
            figures: true,
            cell: ({ earthWires }) => earthWires,
            sortBy: ({ earthWires }) => earthWires,
          },
          {
            title: words.plain,
            figures: true,
            cell: ({ plainWires }) => plainWires ?? '?',
            sortBy: ({ plainWires }) => plainWires ?? -1,
          },
          {
            title: words.barbed,
            figures: true,
            cell: ({ barbedWires }) => barbedWires,
            sortBy: ({ barbedWires }) => barbedWires,
          },
        ]}
      />
      <p className="buttons">
        <button type="button" onClick={add}>
          {words.add}
        </button>
        <button type="button" className="plain" onClick={() => choose([])}>
          {words.clear}
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
  const words = f.words.window.draw.fenceTypes;
  const { steps } = words;
  const missing = missingPlainWires(type);
  return (
    <>
      <KindField thing={type} field="name" step={steps.name} />
      <div className="field-pair">
        <KindField thing={type} field="liveWires" step={steps.liveWires} />
        <KindField thing={type} field="earthWires" step={steps.earthWires} />
      </div>
      <div className="field-pair">
        <KindField
          thing={type}
          field="plainWires"
          onCommit={(wires) => set(steps.plainWires, { plainWires: wires ?? 0 })}
        />
        <KindField thing={type} field="barbedWires" step={steps.barbedWires} />
      </div>
      <p className={missing ? 'field-problem' : 'field-hint'}>
        {missing ? f.say(message('checks.plainWiresNotEntered.hint', missing)) : words.about}
      </p>
      <KindField thing={type} field="postSpacingM" step={steps.postSpacingM} />
      <SelectField
        label={f.words.kinds.fenceType.wireId.label}
        value={type.wireId}
        choices={liveWires}
        onCommit={(wireId) => set(steps.wireId, { wireId })}
      />
      <SelectField
        label={f.words.kinds.fenceType.plainWireId.label}
        value={type.plainWireId ?? ''}
        choices={[{ value: '', label: words.sameAsLive }, ...plainWires]}
        onCommit={(id) =>
          void commit(steps.plainWireId, setPlainWire({ typeId: type.id, wireId: id === '' ? null : id }))
        }
      />
      <KindFields thing={type} except={placed} />
    </>
  );
}

/** Fields that have a place of their own in the form. */
const placed = ['name', 'liveWires', 'earthWires', 'plainWires', 'barbedWires', 'postSpacingM'] as const;
