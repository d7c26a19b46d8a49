import { propertyOf } from '../../../core/model/project.ts';
import type { Energiser } from '../../../core/model/things.ts';
import { energisersNeeded } from '../../../core/survey/power/energiserNeeded.ts';
import { fixed, formatVoltage } from '../../../core/words/numbers/write.ts';
import { useOpenFile } from '../../state/appState.ts';
import { change } from '../../state/change.ts';
import { EnergiserLabel } from '../draw/SupplyDetails.tsx';
import { useConductorChoices } from '../draw/useConductorChoices.ts';
import { Caution } from '../parts/Caution.tsx';
import { SelectField } from '../parts/fields.tsx';
import { usePower } from './usePower.ts';

/** Each energiser by its label, with what the fence makes of it. */
export function Supply() {
  const { project } = useOpenFile();
  const energisers = [...project.energiser.values()];
  return (
    <>
      {energisers.length === 0 ? (
        <p className="register-empty">No energiser yet. In Draw press E, place it, and lead out to the fence.</p>
      ) : (
        energisers.map((energiser) => <OneEnergiser key={energiser.id} energiser={energiser} />)
      )}
      <Caution>
        Only an electrician works on the mains side. Before anyone touches fence, lead-out or earth stakes: energiser
        off, fence proven dead with a tester.
      </Caution>
    </>
  );
}

function OneEnergiser({ energiser }: { readonly energiser: Energiser }) {
  const { project } = useOpenFile();
  const { power, estimate } = usePower();
  const cables = useConductorChoices('cable');
  const index = power.supplies.findIndex((supply) => supply.energiser.id === energiser.id);
  const supply = power.supplies[index];
  const now = estimate.supplies[index]?.voltages;
  const needed = energisersNeeded(power, estimate).find(({ energiserId }) => energiserId === energiser.id);
  const leadOuts = [...project.leadOut.values()].filter(({ energiserId }) => energiserId === energiser.id);
  return (
    <section className="block" aria-label={`Energiser ${energiser.name}`}>
      <h2>{energiser.name}</h2>
      <EnergiserLabel energiser={energiser} />
      {supply && now ? (
        <dl className="plan-figures two">
          <div>
            <dt>At its terminals</dt>
            <dd>{formatVoltage(now.sourceVoltageV)}</dd>
          </div>
          <div>
            <dt>Peak current</dt>
            <dd>{fixed(now.sourceCurrentA, 1)} A</dd>
          </div>
          <div>
            <dt>Fence it feeds</dt>
            <dd>{ohms(now.fenceOhm)}</dd>
          </div>
          <div>
            <dt>Inside it</dt>
            <dd>{ohms(supply.internalOhm)}</dd>
          </div>
        </dl>
      ) : null}
      <p className="field-hint">
        Inside it: 500 (V open - V into 500) / V into 500, from the label. A real energiser is a charged capacitor and a
        transformer, so this fits best near 500 ohm. All figures but the label's are estimates.
      </p>
      {needed ? (
        <Needed margin={needed.margin} openCircuitV={needed.openCircuitV} into500OhmV={needed.into500OhmV} />
      ) : null}
      {leadOuts.map((leadOut) => (
        <SelectField
          key={leadOut.id}
          label={`Cable of lead-out ${leadOut.name}`}
          value={leadOut.cableId}
          choices={cables}
          onCommit={(cableId) => change(`Change the cable of ${leadOut.name}`, 'leadOut', leadOut.id, { cableId })}
        />
      ))}
    </section>
  );
}

function Needed(needed: { readonly margin: number; readonly openCircuitV: number; readonly into500OhmV: number }) {
  const { stockMinimumV } = propertyOf(useOpenFile().project).power;
  const label = `${formatVoltage(needed.openCircuitV)} open circuit and ${formatVoltage(needed.into500OhmV)} into 500 ohm`;
  return (
    <p>
      <strong>Energiser needed: </strong>
      about {label} would just hold {formatVoltage(stockMinimumV)} everywhere, with the same resistance inside.{' '}
      {needed.margin >= 1
        ? `This one gives ${fixed(needed.margin, 1)} times that.`
        : `This one gives ${fixed(100 * needed.margin, 0)} % of that.`}
    </p>
  );
}

function ohms(ohm: number): string {
  return Number.isFinite(ohm) ? `${fixed(ohm, ohm < 100 ? 1 : 0)} ohm` : 'no load';
}
