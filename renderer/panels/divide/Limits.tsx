import { propertyOf } from '../../../core/model/project.ts';
import type { DivideSettings } from '../../../core/model/things.ts';
import { useOpenFile } from '../../state/appState.ts';
import { change } from '../../state/change.ts';
import { NumberField } from '../parts/fields.tsx';
import { LengthField } from '../parts/LengthField.tsx';

/** What every section must keep to, and what a switch costs where. */
export function Limits() {
  const { divide } = propertyOf(useOpenFile().project);
  const set = (patch: Partial<DivideSettings>) =>
    change('Change the limits', 'property', 'property', { divide: { ...divide, ...patch } });
  const cost = (label: string, key: keyof DivideSettings['costs']) => (
    <NumberField
      label={label}
      unit="x"
      decimals={1}
      min={0.1}
      max={100}
      value={divide.costs[key]}
      onCommit={(value) => {
        if (value !== null) set({ costs: { ...divide.costs, [key]: value } });
      }}
    />
  );
  return (
    <section className="block" aria-label="Limits">
      <LengthField
        label="Longest section, of fence"
        valueM={divide.maxSectionM}
        minM={50}
        maxM={1e6}
        onCommitM={(maxSectionM) => {
          if (maxSectionM !== null) set({ maxSectionM });
        }}
      />
      <NumberField
        label="Most gateways in a section"
        unit="gateways"
        decimals={0}
        min={1}
        max={1000}
        optional
        placeholder="no limit"
        value={divide.maxGateways}
        onCommit={(maxGateways) => set({ maxGateways: maxGateways === null ? null : Math.round(maxGateways) })}
      />
      <h3>What a switch costs</h3>
      <p className="field-hint">Relative figures; common practice, no source. The plan looks for the cheapest set.</p>
      {cost('At a gateway', 'gateway')}
      {cost('At a take-off', 'takeOff')}
      {cost('Along a run', 'alongRun')}
    </section>
  );
}
