import { costFields, divideFields } from '../../../core/kinds/property.ts';
import { propertyOf } from '../../../core/model/project.ts';
import type { DivideSettings } from '../../../core/model/things.ts';
import { useOpenFile } from '../../state/appState.ts';
import { change } from '../../state/change.ts';
import { DescribedField } from '../parts/KindField.tsx';

/** What every section must keep to, and what a switch costs where. */
export function Limits() {
  const { divide } = propertyOf(useOpenFile().project);
  const set = (patch: Partial<DivideSettings>) =>
    change('Change the limits', 'property', 'property', { divide: { ...divide, ...patch } });
  const cost = (key: keyof DivideSettings['costs']) => (
    <DescribedField
      name={key}
      field={costFields[key]}
      value={divide.costs[key]}
      onCommit={(value) => set({ costs: { ...divide.costs, [key]: value } })}
    />
  );
  return (
    <section className="block" aria-label="Limits">
      <DescribedField
        name="maxSectionM"
        field={divideFields.maxSectionM}
        value={divide.maxSectionM}
        onCommit={(maxSectionM) => set({ maxSectionM })}
      />
      <DescribedField
        name="maxGateways"
        field={divideFields.maxGateways}
        value={divide.maxGateways}
        onCommit={(maxGateways) => set({ maxGateways })}
      />
      <h3>What a switch costs</h3>
      <p className="field-hint">Relative figures; common practice, no source. The plan looks for the cheapest set.</p>
      {cost('gateway')}
      {cost('takeOff')}
      {cost('alongRun')}
    </section>
  );
}
