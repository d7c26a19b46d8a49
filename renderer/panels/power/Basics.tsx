import { conductorLibrary } from '../../../core/electrical/conductors/conductorLibrary.ts';
import { leakageClasses } from '../../../core/electrical/conductors/leakage.ts';
import { stockMinimums } from '../../../core/electrical/energiser/stockMinimum.ts';
import { leakage } from '../../../core/kinds/common.ts';
import { boundsOf } from '../../../core/kinds/form.ts';
import { powerFields } from '../../../core/kinds/property.ts';
import { addThing } from '../../../core/model/edits/addThing.ts';
import { propertyOf } from '../../../core/model/project.ts';
import type { Growth, PowerSettings, UserConductor } from '../../../core/model/things.ts';
import { fixed, formatVoltage } from '../../../core/words/numbers/write.ts';
import { capital, counted } from '../../../core/words/text.ts';
import { useOpenFile } from '../../state/appState.ts';
import { change } from '../../state/change.ts';
import { choose } from '../../state/choose.ts';
import { newId } from '../../state/newId.ts';
import { commit } from '../../state/session.ts';
import { NumberField, SelectField } from '../parts/fields.tsx';
import { Register } from '../parts/Register.tsx';
import { basisInWords } from './basisInWords.ts';

/** What the estimate rests on: the stock, the growth, the wire. */
export function Basics() {
  return (
    <>
      <Stock />
      <GrowthOfAll />
      <Conductors />
    </>
  );
}

function usePowerSettings() {
  const { power } = propertyOf(useOpenFile().project);
  const set = (label: string, patch: Partial<PowerSettings>) =>
    change(label, 'property', 'property', { power: { ...power, ...patch } });
  return { power, set };
}

function Stock() {
  const { power, set } = usePowerSettings();
  const setLeast = (stockMinimumV: number) => set('Change the least voltage', { stockMinimumV });
  return (
    <section className="block" aria-label="Stock">
      <NumberField
        label="Least peak that holds the stock"
        unit="V"
        decimals={0}
        {...boundsOf(powerFields.stockMinimumV)}
        value={power.stockMinimumV}
        hint="Common practice, no source; the stock have the last word."
        onCommit={(volts) => {
          if (volts !== null) setLeast(volts);
        }}
      />
      <ul className="stock-choices">
        {stockMinimums.map(({ stock, fromV, toV }) => (
          <li key={stock}>
            <span>{stock}</span>
            {[...new Set([fromV, toV])].map((volts) => (
              <button
                key={volts}
                type="button"
                aria-label={`${formatVoltage(volts)}: ${stock}`}
                aria-pressed={power.stockMinimumV === volts}
                onClick={() => setLeast(volts)}
              >
                {formatVoltage(volts)}
              </button>
            ))}
          </li>
        ))}
      </ul>
    </section>
  );
}

type GrowthChoice = Extract<Growth, string> | 'own';

function GrowthOfAll() {
  const { project } = useOpenFile();
  const { power, set } = usePowerSettings();
  const { growth } = power;
  const chosen = leakageClasses.find((each) => each.growth === growth);
  const own = typeof growth === 'object' ? growth.leakageOhmKm : null;
  const exceptions = [...project.fenceLine.values()].filter((line) => line.live && line.growth !== null);
  return (
    <section className="block" aria-label="Growth">
      <SelectField<GrowthChoice>
        label="Growth against the wires, on the whole property"
        value={own === null ? (growth as GrowthChoice) : 'own'}
        choices={[
          ...leakageClasses.map(({ growth: value, name }) => ({ value, label: name })),
          { value: 'own', label: 'Own figure' },
        ]}
        hint={
          chosen
            ? `Each km of each live wire leaks through ${fixed(chosen.ohmKmPerWire / 1000, 0)} kilohm. ${capital(basisInWords(chosen.basis))}. Readings, fitted, go before it.`
            : undefined
        }
        onCommit={(value) =>
          set('Change the growth', {
            growth: value === 'own' ? { leakageOhmKm: chosen?.ohmKmPerWire ?? 50_000 } : value,
          })
        }
      />
      {own === null ? null : (
        <NumberField
          label="Leakage of one km of one live wire"
          unit="kilohm"
          {...boundsOf(leakage.leakageOhmKm, 1000)}
          value={own / 1000}
          onCommit={(kilohm) => {
            if (kilohm !== null) set('Change the leakage', { growth: { leakageOhmKm: kilohm * 1000 } });
          }}
        />
      )}
      <p className="field-hint">
        {exceptions.length === 0
          ? 'A fence can have growth of its own: choose it on the map.'
          : `${counted(exceptions.length, 'fence has', 'fences have')} growth of its own: ${exceptions
              .slice(0, 8)
              .map(({ name }) => name)
              .join(', ')}${exceptions.length > 8 ? ', ...' : ''}.`}
      </p>
    </section>
  );
}

function Conductors() {
  const { project } = useOpenFile();
  const add = () => {
    const id = newId('conductor');
    const conductor = { kind: 'conductor', name: 'Own conductor', ohmPerKm: 35, note: '' } as const;
    void commit(
      'Enter a conductor',
      addThing(conductor, () => id),
      { choose: [id] },
    );
  };
  return (
    <section className="block" aria-label="Wire and cable">
      <h2>Wire and cable</h2>
      <Register<UserConductor>
        caption="Your own entries: used by their figure"
        rows={[...project.conductor.values()]}
        idOf={({ id }) => id}
        empty="None. Poly-wire, tape and rope differ from make to make: enter the figure on the reel."
        columns={[
          { title: 'Name', cell: ({ name }) => name, sortBy: ({ name }) => name },
          {
            title: 'Ohm per km',
            figures: true,
            cell: ({ ohmPerKm }) => ohmFigure(ohmPerKm),
            sortBy: ({ ohmPerKm }) => ohmPerKm,
          },
        ]}
      />
      <p className="buttons">
        <button type="button" onClick={add}>
          Enter a conductor
        </button>
        <button type="button" className="plain" onClick={() => choose([])}>
          Choose nothing
        </button>
      </p>
      <details className="legs">
        <summary>The library: {conductorLibrary.length} conductors, where each figure is from</summary>
        <div className="register">
          <table>
            <caption>At 20 °C. n live wires side by side, joined at both ends, have an n-th of it.</caption>
            <thead>
              <tr>
                <th scope="col">Conductor</th>
                <th scope="col" className="amount">
                  Ohm per km
                </th>
                <th scope="col" className="amount">
                  Trade tables
                </th>
              </tr>
            </thead>
            <tbody>
              {conductorLibrary.map(({ id, name, ohmPerKm, basis, trade }) => (
                <tr key={id}>
                  <th scope="row" className="improvement-name">
                    {name}
                    <span className="field-hint"> {basisInWords(basis)}</span>
                  </th>
                  <td className="amount">{ohmFigure(ohmPerKm)}</td>
                  <td className="amount">{trade ? `about ${ohmFigure(trade.ohmPerKm)}` : ''}</td>
                </tr>
              ))}
            </tbody>
          </table>
        </div>
        <p className="field-hint">
          Trade tables: common practice, no source; shown beside, not used. So are the cores that lead-out cable is sold
          with, and its rating of 10 kV or more.
        </p>
      </details>
    </section>
  );
}

function ohmFigure(ohmPerKm: number): string {
  return fixed(ohmPerKm, ohmPerKm < 10 ? 1 : 0);
}
