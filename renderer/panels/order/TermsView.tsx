import { orderSettings as described, fenceMake } from '../../../core/kinds/order.ts';
import type { OrderSettings } from '../../../core/model/things.ts';
import { changeTerms, setDroppers } from '../../../core/quantities/edits/changeTerms.ts';
import { orderSettingsOf } from '../../../core/quantities/takeOff.ts';
import { useOpenFile } from '../../state/appState.ts';
import { commit } from '../../state/session.ts';
import { useWords } from '../../state/useFigures.ts';
import { TextField } from '../parts/fields.tsx';
import { DescribedField } from '../parts/KindField.tsx';

type Terms = Partial<Omit<OrderSettings, 'kind' | 'id'>>;

/** What the order is worked out with: currency, tax, what counts, and the rules of counting. */
export function TermsView() {
  const { project } = useOpenFile();
  const settings = orderSettingsOf(project);
  const words = useWords();
  const { terms: said } = words.window.order;
  const set = (terms: Terms) => void commit(said.changed, changeTerms(terms));
  const term = (name: keyof Terms) => (
    <DescribedField
      words={words.kinds.orderSettings[name]}
      field={described.fields[name]}
      value={settings[name]}
      onCommit={(value) => set({ [name]: value })}
    />
  );
  return (
    <>
      <section className="block" aria-labelledby="terms-money">
        <h3 id="terms-money">{said.money}</h3>
        <div className="field-pair">
          <TextField
            label={said.currency}
            value={settings.currency ?? ''}
            hint={said.currencyHint}
            onCommit={(text) => set({ currency: text === '' ? null : text.toUpperCase() })}
          />
          {term('taxPercent')}
        </div>
      </section>
      <section className="block" aria-labelledby="terms-count">
        <h3 id="terms-count">{said.counted}</h3>
        {term('count')}
        <div className="field-pair">
          {term('angleFromDeg')}
          {term('strainerFromDeg')}
        </div>
        <div className="field-pair">
          {term('maxStrainM')}
          {term('tieOffM')}
        </div>
        <div className="field-pair">
          {term('tightenerEveryM')}
          {term('signEveryM')}
        </div>
        <div className="field-pair">
          {term('cutLossM')}
          {term('rollTrimM')}
        </div>
        <p className="field-hint">{said.source}</p>
      </section>
      <section className="block" aria-labelledby="terms-droppers">
        <h3 id="terms-droppers">{said.droppers}</h3>
        {[...project.fenceType.values()].map(({ id, name }) => (
          <DescribedField
            key={id}
            words={words.kinds.fenceMake.droppersPerBay}
            field={fenceMake.fields.droppersPerBay}
            label={name}
            value={project.fenceMake.get(`make:${id}`)?.droppersPerBay ?? 0}
            onCommit={(value) => void commit(said.droppersOf({ fence: name }), setDroppers(id, value))}
          />
        ))}
      </section>
    </>
  );
}
