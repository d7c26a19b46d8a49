import { conductorLibrary } from '../../../core/electrical/conductors/conductorLibrary.ts';
import { leakageClasses } from '../../../core/electrical/conductors/leakage.ts';
import { stockMinimums } from '../../../core/electrical/energiser/stockMinimum.ts';
import { leakage } from '../../../core/kinds/common.ts';
import { boundsOf } from '../../../core/kinds/form.ts';
import { powerFields } from '../../../core/kinds/property.ts';
import { addThing } from '../../../core/model/edits/addThing.ts';
import { propertyOf } from '../../../core/model/project.ts';
import type { Growth, PowerSettings, UserConductor } from '../../../core/model/things.ts';
import { useOpenFile } from '../../state/appState.ts';
import { change } from '../../state/change.ts';
import { choose } from '../../state/choose.ts';
import { newId } from '../../state/newId.ts';
import { commit } from '../../state/session.ts';
import { useFigures, useWords } from '../../state/useFigures.ts';
import { NumberField, SelectField } from '../parts/fields.tsx';
import { Register } from '../parts/Register.tsx';

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
  const f = useFigures();
  const words = f.words.window.power.basics.stock;
  const setLeast = (stockMinimumV: number) => set(words.step, { stockMinimumV });
  return (
    <section className="block" aria-label={words.title}>
      <NumberField
        label={words.least}
        unit="V"
        decimals={0}
        {...boundsOf(powerFields.stockMinimumV)}
        value={power.stockMinimumV}
        hint={words.hint}
        onCommit={(volts) => {
          if (volts !== null) setLeast(volts);
        }}
      />
      <ul className="stock-choices">
        {stockMinimums.map(({ stock, fromV, toV }) => (
          <li key={stock}>
            <span>{f.words.power.stock[stock]}</span>
            {[...new Set([fromV, toV])].map((volts) => (
              <button
                key={volts}
                type="button"
                aria-label={words.choice({ volts, stock: f.words.power.stock[stock] })}
                aria-pressed={power.stockMinimumV === volts}
                onClick={() => setLeast(volts)}
              >
                {f.volts(volts)}
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
  const all = useWords();
  const words = all.window.power.basics.growth;
  const chosen = leakageClasses.find((each) => each.growth === growth);
  const own = typeof growth === 'object' ? growth.leakageOhmKm : null;
  const exceptions = [...project.fenceLine.values()].filter((line) => line.live && line.growth !== null);
  return (
    <section className="block" aria-label={words.title}>
      <SelectField<GrowthChoice>
        label={words.onAll}
        value={own === null ? (growth as GrowthChoice) : 'own'}
        choices={[
          ...leakageClasses.map(({ growth: value }) => ({ value, label: all.power.growth[value] })),
          { value: 'own', label: words.own },
        ]}
        hint={chosen ? words.hint({ kilohm: chosen.ohmKmPerWire / 1000, basis: chosen.basis }) : undefined}
        onCommit={(value) =>
          set(words.step, {
            growth: value === 'own' ? { leakageOhmKm: chosen?.ohmKmPerWire ?? 50_000 } : value,
          })
        }
      />
      {own === null ? null : (
        <NumberField
          label={words.leakage}
          unit="kilohm"
          {...boundsOf(leakage.leakageOhmKm, 1000)}
          value={own / 1000}
          onCommit={(kilohm) => {
            if (kilohm !== null) set(words.leakageStep, { growth: { leakageOhmKm: kilohm * 1000 } });
          }}
        />
      )}
      <p className="field-hint">
        {exceptions.length === 0 ? words.noExceptions : words.exceptions({ names: exceptions.map(({ name }) => name) })}
      </p>
    </section>
  );
}

function Conductors() {
  const { project } = useOpenFile();
  const f = useFigures();
  const words = f.words.window.power.basics.conductors;
  const add = () => {
    const id = newId('conductor');
    const conductor = { kind: 'conductor', name: words.newName, ohmPerKm: 35, note: '' } as const;
    void commit(
      words.add,
      addThing(conductor, () => id),
      { choose: [id] },
    );
  };
  return (
    <section className="block" aria-label={words.title}>
      <h2>{words.title}</h2>
      <Register<UserConductor>
        caption={words.own}
        rows={[...project.conductor.values()]}
        idOf={({ id }) => id}
        empty={words.empty}
        columns={[
          { title: words.name, cell: ({ name }) => name, sortBy: ({ name }) => name },
          {
            title: words.ohmPerKm,
            figures: true,
            cell: words.figure,
            sortBy: ({ ohmPerKm }) => ohmPerKm,
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
      <details className="legs">
        <summary>{words.library({ count: conductorLibrary.length })}</summary>
        <div className="register">
          <table>
            <caption>{words.caption}</caption>
            <thead>
              <tr>
                <th scope="col">{words.conductor}</th>
                <th scope="col" className="amount">
                  {words.ohmPerKm}
                </th>
                <th scope="col" className="amount">
                  {words.trade}
                </th>
              </tr>
            </thead>
            <tbody>
              {conductorLibrary.map(({ id, name, ohmPerKm, basis, trade }) => (
                <tr key={id}>
                  <th scope="row" className="improvement-name">
                    {f.say(name)}
                    <span className="field-hint"> {f.words.power.basis(basis)}</span>
                  </th>
                  <td className="amount">{words.figure({ ohmPerKm })}</td>
                  <td className="amount">{trade ? words.about(trade) : ''}</td>
                </tr>
              ))}
            </tbody>
          </table>
        </div>
        <p className="field-hint">{words.tradeHint}</p>
      </details>
    </section>
  );
}
