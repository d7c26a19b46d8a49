import { placeEarthField } from '../../../core/model/edits/placeEarthField.ts';
import type { EarthField, Energiser, LeadOut } from '../../../core/model/things.ts';
import { useOpenFile } from '../../state/appState.ts';
import { change } from '../../state/change.ts';
import { newId } from '../../state/newId.ts';
import { commit } from '../../state/session.ts';
import { KindField, KindFields } from '../parts/KindField.tsx';
import { CableField } from './CableField.tsx';

export function EnergiserDetails({ energiser }: { readonly energiser: Energiser }) {
  const { project } = useOpenFile();
  const { name } = energiser;
  const field = [...project.earthField.values()].find(({ energiserId }) => energiserId === energiser.id);
  return (
    <>
      <KindField thing={energiser} field="name" step={`Rename ${name}`} />
      <EnergiserLabel energiser={energiser} />
      <KindField thing={energiser} field="status" step={(status) => `Mark ${status}: ${name}`} />
      <KindFields thing={energiser} except={['name', 'openCircuitV', 'into500OhmV', 'storedJ', 'outputJ', 'status']} />
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
  const step = `Change the figures of ${energiser.name}`;
  return (
    <>
      <div className="field-pair">
        <KindField thing={energiser} field="openCircuitV" step={step} />
        <KindField thing={energiser} field="into500OhmV" step={step} />
      </div>
      <div className="field-pair">
        <KindField thing={energiser} field="storedJ" step={step} />
        <KindField thing={energiser} field="outputJ" step={step} />
      </div>
      <p className="field-hint">All four stand on the energiser's label. 500 ohm is the standard's reference load.</p>
    </>
  );
}

export function EarthFieldDetails({ field }: { readonly field: EarthField }) {
  const step = 'Change the earth stakes';
  return (
    <section className="block" aria-label="Earth stakes">
      <h3>Earth stakes</h3>
      <div className="field-pair">
        <KindField thing={field} field="rods" step={step} />
        <KindField thing={field} field="rodLengthM" step={step} />
      </div>
      <div className="field-pair">
        <KindField thing={field} field="rodDiameterMm" step={step} />
        <KindField thing={field} field="spacingM" step={step} />
      </div>
      <KindFields thing={field} except={['rods', 'rodLengthM', 'rodDiameterMm', 'spacingM']} />
    </section>
  );
}

export function LeadOutDetails({ leadOut }: { readonly leadOut: LeadOut }) {
  const { name } = leadOut;
  return (
    <>
      <KindField thing={leadOut} field="name" step={`Rename ${name}`} />
      <CableField
        label="Cable"
        cableId={leadOut.cableId}
        inGround={leadOut.buried}
        onCommit={(cableId) => change(`Change the cable of ${name}`, 'leadOut', leadOut.id, { cableId })}
      />
      <KindFields thing={leadOut} except={['name']} />
    </>
  );
}
