import { placeEarthField } from '../../../core/model/edits/placeEarthField.ts';
import type { EarthField, Energiser, LeadOut } from '../../../core/model/things.ts';
import { useOpenFile } from '../../state/appState.ts';
import { change } from '../../state/change.ts';
import { newId } from '../../state/newId.ts';
import { commit } from '../../state/session.ts';
import { useWords } from '../../state/useFigures.ts';
import { KindField, KindFields } from '../parts/KindField.tsx';
import { CableField } from './CableField.tsx';

export function EnergiserDetails({ energiser }: { readonly energiser: Energiser }) {
  const { project } = useOpenFile();
  const { name } = energiser;
  const { steps, supply } = useWords().window.draw.details;
  const field = [...project.earthField.values()].find(({ energiserId }) => energiserId === energiser.id);
  return (
    <>
      <KindField thing={energiser} field="name" step={steps.rename({ name })} />
      <EnergiserLabel energiser={energiser} />
      <KindField thing={energiser} field="status" step={(status) => steps.mark({ status, name })} />
      <KindFields thing={energiser} except={['name', 'openCircuitV', 'into500OhmV', 'storedJ', 'outputJ', 'status']} />
      {field ? (
        <EarthFieldDetails field={field} />
      ) : (
        <button
          type="button"
          onClick={() => void commit(steps.addEarthStakes, placeEarthField({ energiserId: energiser.id }, newId))}
        >
          {supply.addStakes}
        </button>
      )}
    </>
  );
}

/** The figures that stand on an energiser's label. */
export function EnergiserLabel({ energiser }: { readonly energiser: Energiser }) {
  const { steps, supply } = useWords().window.draw.details;
  const step = steps.figures({ name: energiser.name });
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
      <p className="field-hint">{supply.label}</p>
    </>
  );
}

export function EarthFieldDetails({ field }: { readonly field: EarthField }) {
  const { steps, supply } = useWords().window.draw.details;
  const step = steps.earthStakes;
  return (
    <section className="block" aria-label={supply.earthStakes}>
      <h3>{supply.earthStakes}</h3>
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
  const { steps, supply } = useWords().window.draw.details;
  return (
    <>
      <KindField thing={leadOut} field="name" step={steps.rename({ name })} />
      <CableField
        label={supply.cable}
        cableId={leadOut.cableId}
        inGround={leadOut.buried}
        onCommit={(cableId) => change(steps.cable({ name }), 'leadOut', leadOut.id, { cableId })}
      />
      <KindFields thing={leadOut} except={['name']} />
    </>
  );
}
