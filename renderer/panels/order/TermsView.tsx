import type { OrderSettings } from '../../../core/model/things.ts';
import { changeTerms, setDroppers } from '../../../core/quantities/edits/changeTerms.ts';
import { orderSettingsOf } from '../../../core/quantities/takeOff.ts';
import { useOpenFile } from '../../state/appState.ts';
import { commit } from '../../state/session.ts';
import { NumberField, SelectField, TextField } from '../parts/fields.tsx';
import { LengthField } from '../parts/LengthField.tsx';

type Terms = Partial<Omit<OrderSettings, 'kind' | 'id'>>;

/** What the order is worked out with: currency, tax, what counts, and the rules of counting. */
export function TermsView() {
  const { project } = useOpenFile();
  const settings = orderSettingsOf(project);
  const set = (terms: Terms) => void commit('Change the terms', changeTerms(terms));
  const degrees = (label: string, key: 'angleFromDeg' | 'strainerFromDeg') => (
    <NumberField
      label={label}
      unit="degrees"
      decimals={0}
      max={180}
      value={settings[key]}
      onCommit={(value) => {
        if (value !== null) set({ [key]: value });
      }}
    />
  );
  const length = (label: string, key: LengthKey, leastM: number, mostM: number) => (
    <LengthField
      label={label}
      valueM={settings[key]}
      minM={leastM}
      maxM={mostM}
      onCommitM={(value) => {
        if (value !== null) set({ [key]: value });
      }}
    />
  );
  return (
    <>
      <section className="block" aria-labelledby="terms-money">
        <h3 id="terms-money">Money</h3>
        <div className="field-pair">
          <TextField
            label="Currency"
            value={settings.currency ?? ''}
            hint="Its three letters: EUR, NZD, USD."
            onCommit={(text) => set({ currency: text === '' ? null : text.toUpperCase() })}
          />
          <NumberField
            label="Tax"
            unit="%"
            max={100}
            value={settings.taxPercent}
            hint="On goods and work that name none of their own."
            onCommit={(value) => {
              if (value !== null) set({ taxPercent: value });
            }}
          />
        </div>
      </section>
      <section className="block" aria-labelledby="terms-count">
        <h3 id="terms-count">What is counted</h3>
        <SelectField<OrderSettings['count']>
          label="Things"
          value={settings.count}
          choices={[
            { value: 'planned', label: 'Planned: what stands already is left out' },
            { value: 'all', label: 'All, as if nothing stood yet' },
          ]}
          onCommit={(count) => set({ count })}
        />
        <div className="field-pair">
          {degrees('Bend for an angle post', 'angleFromDeg')}
          {degrees('Bend for a strainer', 'strainerFromDeg')}
        </div>
        <div className="field-pair">
          {length('Longest strain of wire', 'maxStrainM', 10, 100_000)}
          {length('Wire for each tie-off', 'tieOffM', 0, 50)}
        </div>
        <div className="field-pair">
          {length('A tightener for each', 'tightenerEveryM', 10, 100_000)}
          {length('Warning signs every', 'signEveryM', 1, 10_000)}
        </div>
        <div className="field-pair">
          {length('Lost at each cut', 'cutLossM', 0, 5)}
          {length('Trimmed off each roll', 'rollTrimM', 0, 5)}
        </div>
        <p className="field-hint">
          Common practice, no source, but for the tightener on each wire of every quarter mile (R. Lemus, extension
          article). One stay is counted for every fence that ends on a post.
        </p>
      </section>
      <section className="block" aria-labelledby="terms-droppers">
        <h3 id="terms-droppers">Droppers between each two posts</h3>
        {[...project.fenceType.values()].map(({ id, name }) => (
          <NumberField
            key={id}
            label={name}
            unit="droppers"
            decimals={0}
            max={20}
            value={project.fenceMake.get(`make:${id}`)?.droppersPerBay ?? 0}
            onCommit={(value) => {
              if (value !== null) void commit(`Droppers of ${name}`, setDroppers(id, Math.round(value)));
            }}
          />
        ))}
      </section>
    </>
  );
}

type LengthKey = 'maxStrainM' | 'tieOffM' | 'tightenerEveryM' | 'signEveryM' | 'cutLossM' | 'rollTrimM';
