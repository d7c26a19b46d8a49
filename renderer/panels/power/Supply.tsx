import { propertyOf } from '../../../core/model/project.ts';
import type { Energiser } from '../../../core/model/things.ts';
import { energisersNeeded } from '../../../core/survey/power/energiserNeeded.ts';
import type { Texts } from '../../../core/words/message.ts';
import { useOpenFile } from '../../state/appState.ts';
import { change } from '../../state/change.ts';
import { useFigures, useWords } from '../../state/useFigures.ts';
import { EnergiserLabel } from '../draw/SupplyDetails.tsx';
import { useConductorChoices } from '../draw/useConductorChoices.ts';
import { Caution } from '../parts/Caution.tsx';
import { SelectField } from '../parts/fields.tsx';
import { usePower } from './usePower.ts';

/** Each energiser by its label, with what the fence makes of it. */
export function Supply() {
  const { project } = useOpenFile();
  const words = useWords().window.power.supply;
  const energisers = [...project.energiser.values()];
  return (
    <>
      {energisers.length === 0 ? (
        <p className="register-empty">{words.empty}</p>
      ) : (
        energisers.map((energiser) => <OneEnergiser key={energiser.id} energiser={energiser} />)
      )}
      <Caution>{words.caution}</Caution>
    </>
  );
}

function OneEnergiser({ energiser }: { readonly energiser: Energiser }) {
  const { project } = useOpenFile();
  const { power, estimate } = usePower();
  const cables = useConductorChoices('cable');
  const f = useFigures();
  const words = f.words.window.power.supply;
  const index = power.supplies.findIndex((supply) => supply.energiser.id === energiser.id);
  const supply = power.supplies[index];
  const now = estimate.supplies[index]?.voltages;
  const needed = energisersNeeded(power, estimate).find(({ energiserId }) => energiserId === energiser.id);
  const leadOuts = [...project.leadOut.values()].filter(({ energiserId }) => energiserId === energiser.id);
  return (
    <section className="block" aria-label={words.energiser(energiser)}>
      <h2>{energiser.name}</h2>
      <EnergiserLabel energiser={energiser} />
      {supply && now ? (
        <dl className="plan-figures two">
          <div>
            <dt>{words.atTerminals}</dt>
            <dd>{f.volts(now.sourceVoltageV)}</dd>
          </div>
          <div>
            <dt>{words.current}</dt>
            <dd>{words.amperes({ current: now.sourceCurrentA })}</dd>
          </div>
          <div>
            <dt>{words.fence}</dt>
            <dd>{ohms(now.fenceOhm, words)}</dd>
          </div>
          <div>
            <dt>{words.ownResistance}</dt>
            <dd>{ohms(supply.internalOhm, words)}</dd>
          </div>
        </dl>
      ) : null}
      <p className="field-hint">{words.formula}</p>
      {needed ? (
        <Needed margin={needed.margin} openCircuitV={needed.openCircuitV} into500OhmV={needed.into500OhmV} />
      ) : null}
      {leadOuts.map((leadOut) => (
        <SelectField
          key={leadOut.id}
          label={words.cableOf(leadOut)}
          value={leadOut.cableId}
          choices={cables}
          onCommit={(cableId) => change(words.cableStep(leadOut), 'leadOut', leadOut.id, { cableId })}
        />
      ))}
    </section>
  );
}

function Needed(needed: { readonly margin: number; readonly openCircuitV: number; readonly into500OhmV: number }) {
  const { stockMinimumV } = propertyOf(useOpenFile().project).power;
  const words = useWords().window.power.supply;
  const { openCircuitV, into500OhmV, margin } = needed;
  return (
    <p>
      <strong>{words.needed}</strong> {words.wouldHold({ openCircuitV, into500OhmV, leastV: stockMinimumV })}{' '}
      {words.gives({ margin })}
    </p>
  );
}

function ohms(ohm: number, words: Texts['window']['power']['supply']): string {
  return Number.isFinite(ohm) ? words.ohm({ ohm }) : words.noLoad;
}
