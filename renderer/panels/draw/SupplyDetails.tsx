import { placeEarthField } from '../../../core/model/edits/placeEarthField.ts';
import type { EarthField, Energiser, LeadOut } from '../../../core/model/things.ts';
import { useOpenFile } from '../../state/appState.ts';
import { change } from '../../state/change.ts';
import { newId } from '../../state/newId.ts';
import { commit } from '../../state/session.ts';
import { CheckField, NumberField, TextField } from '../parts/fields.tsx';
import { LengthField } from '../parts/LengthField.tsx';
import { StatusField } from '../parts/StatusField.tsx';
import { CableField } from './CableField.tsx';

export function EnergiserDetails({ energiser }: { readonly energiser: Energiser }) {
  const { project } = useOpenFile();
  const set = (label: string, patch: Partial<Omit<Energiser, 'kind' | 'id'>>) =>
    change(`${label} ${energiser.name}`, 'energiser', energiser.id, patch);
  const field = [...project.earthField.values()].find(({ energiserId }) => energiserId === energiser.id);
  return (
    <>
      <TextField label="Name" required value={energiser.name} onCommit={(name) => set('Rename', { name })} />
      <EnergiserLabel energiser={energiser} />
      <StatusField status={energiser.status} onCommit={(status) => set(`Mark ${status}:`, { status })} />
      <TextField label="Note" long value={energiser.note} onCommit={(note) => set('Change the note of', { note })} />
      {field ? (
        <EarthFieldDetails field={field} />
      ) : (
        <button
          type="button"
          onClick={() => void commit('Add earth stakes', placeEarthField({ energiserId: energiser.id }, newId))}
        >
          Add its earth stakes
        </button>
      )}
    </>
  );
}

/** The figures that stand on an energiser's label. */
export function EnergiserLabel({ energiser }: { readonly energiser: Energiser }) {
  const set = (patch: Partial<Omit<Energiser, 'kind' | 'id'>>) =>
    change(`Change the figures of ${energiser.name}`, 'energiser', energiser.id, patch);
  return (
    <>
      <div className="field-pair">
        <NumberField
          label="Open-circuit peak"
          unit="V"
          decimals={0}
          min={500}
          max={20_000}
          value={energiser.openCircuitV}
          onCommit={(openCircuitV) => {
            if (openCircuitV !== null) set({ openCircuitV });
          }}
        />
        <NumberField
          label="Peak into 500 ohm"
          unit="V"
          decimals={0}
          min={100}
          max={20_000}
          value={energiser.into500OhmV}
          onCommit={(into500OhmV) => {
            if (into500OhmV !== null) set({ into500OhmV });
          }}
        />
      </div>
      <div className="field-pair">
        <NumberField
          label="Stored energy"
          unit="J"
          optional
          max={1000}
          value={energiser.storedJ}
          onCommit={(storedJ) => set({ storedJ })}
        />
        <NumberField
          label="Output energy"
          unit="J"
          optional
          max={1000}
          value={energiser.outputJ}
          onCommit={(outputJ) => set({ outputJ })}
        />
      </div>
      <p className="field-hint">All four stand on the energiser's label. 500 ohm is the standard's reference load.</p>
    </>
  );
}

export function EarthFieldDetails({ field }: { readonly field: EarthField }) {
  const set = (patch: Partial<Omit<EarthField, 'kind' | 'id'>>) =>
    change('Change the earth stakes', 'earthField', field.id, patch);
  return (
    <section className="block" aria-label="Earth stakes">
      <h3>Earth stakes</h3>
      <div className="field-pair">
        <NumberField
          label="Rods"
          unit="rods"
          decimals={0}
          min={1}
          max={100}
          value={field.rods}
          onCommit={(rods) => {
            if (rods !== null) set({ rods: Math.round(rods) });
          }}
        />
        <LengthField
          label="Driven length"
          valueM={field.rodLengthM}
          minM={0.3}
          maxM={10}
          onCommitM={(rodLengthM) => {
            if (rodLengthM !== null) set({ rodLengthM });
          }}
        />
      </div>
      <div className="field-pair">
        <NumberField
          label="Diameter"
          unit="mm"
          decimals={0}
          min={5}
          max={100}
          value={field.rodDiameterMm}
          onCommit={(rodDiameterMm) => {
            if (rodDiameterMm !== null) set({ rodDiameterMm });
          }}
        />
        <LengthField
          label="Spacing"
          valueM={field.spacingM}
          minM={0.3}
          maxM={50}
          onCommitM={(spacingM) => {
            if (spacingM !== null) set({ spacingM });
          }}
        />
      </div>
      <StatusField status={field.status} onCommit={(status) => set({ status })} />
    </section>
  );
}

export function LeadOutDetails({ leadOut }: { readonly leadOut: LeadOut }) {
  const set = (label: string, patch: Partial<Omit<LeadOut, 'kind' | 'id'>>) =>
    change(`${label} ${leadOut.name}`, 'leadOut', leadOut.id, patch);
  return (
    <>
      <TextField label="Name" required value={leadOut.name} onCommit={(name) => set('Rename', { name })} />
      <CableField
        label="Cable"
        cableId={leadOut.cableId}
        inGround={leadOut.buried}
        onCommit={(cableId) => set('Change the cable of', { cableId })}
      />
      <CheckField
        label="Buried, in insulating conduit"
        value={leadOut.buried}
        onCommit={(buried) => set('Change', { buried })}
      />
      <StatusField status={leadOut.status} onCommit={(status) => set(`Mark ${status}:`, { status })} />
      <TextField label="Note" long value={leadOut.note} onCommit={(note) => set('Change the note of', { note })} />
    </>
  );
}
