import { costFields, divideFields } from '../../../core/kinds/property.ts';
import { propertyOf } from '../../../core/model/project.ts';
import type { DivideSettings } from '../../../core/model/things.ts';
import { useOpenFile } from '../../state/appState.ts';
import { change } from '../../state/change.ts';
import { useWords } from '../../state/useFigures.ts';
import { DescribedField } from '../parts/KindField.tsx';

/** What every section must keep to, and what a switch costs where. */
export function Limits() {
  const { divide } = propertyOf(useOpenFile().project);
  const said = useWords().kinds.property.divide.fields;
  const set = (patch: Partial<DivideSettings>) =>
    change('Change the limits', 'property', 'property', { divide: { ...divide, ...patch } });
  const cost = (key: keyof DivideSettings['costs']) => (
    <DescribedField
      words={said.costs.fields[key]}
      field={costFields[key]}
      value={divide.costs[key]}
      onCommit={(value) => set({ costs: { ...divide.costs, [key]: value } })}
    />
  );
  return (
    <section className="block" aria-label="Limits">
      <DescribedField
        words={said.maxSectionM}
        field={divideFields.maxSectionM}
        value={divide.maxSectionM}
        onCommit={(maxSectionM) => set({ maxSectionM })}
      />
      <DescribedField
        words={said.maxGateways}
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
