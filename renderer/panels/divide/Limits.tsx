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
  const all = useWords();
  const said = all.kinds.property.divide.fields;
  const words = all.window.divide;
  const set = (patch: Partial<DivideSettings>) =>
    change(words.limits.step, 'property', 'property', { divide: { ...divide, ...patch } });
  const cost = (key: keyof DivideSettings['costs']) => (
    <DescribedField
      words={said.costs.fields[key]}
      field={costFields[key]}
      value={divide.costs[key]}
      onCommit={(value) => set({ costs: { ...divide.costs, [key]: value } })}
    />
  );
  return (
    <section className="block" aria-label={words.register.limits}>
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
      <h3>{words.limits.cost}</h3>
      <p className="field-hint">{words.limits.costHint}</p>
      {cost('gateway')}
      {cost('takeOff')}
      {cost('alongRun')}
    </section>
  );
}
