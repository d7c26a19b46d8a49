import { type Message, message } from '../../words/message.ts';

export interface EnergiserLabel {
  readonly openCircuitV: number;
  readonly into500OhmV: number;
  readonly storedJ: number | null;
  readonly outputJ: number | null;
}

export interface LabelProblem {
  readonly field: keyof EnergiserLabel;
  /** An error leaves nothing to calculate with; a doubt is worth a second look at the label. */
  readonly severity: 'error' | 'doubt';
  readonly message: Message;
}

/** Below this a peak "in volts" is surely in kilovolts: no energiser gives so little (common practice, no source). */
const PROBABLY_KILOVOLTS_BELOW = 100;

/** Whether an energiser's label figures make sense, field by field. */
export function labelProblems(label: EnergiserLabel): LabelProblem[] {
  const { openCircuitV, into500OhmV, storedJ, outputJ } = label;
  const problems: LabelProblem[] = [];
  const report = (field: LabelProblem['field'], severity: LabelProblem['severity'], message: Message): void => {
    problems.push({ field, severity, message });
  };
  const peaks = [
    ['openCircuitV', openCircuitV],
    ['into500OhmV', into500OhmV],
  ] as const;
  for (const [field, volts] of peaks) {
    if (!(volts > 0 && volts < Infinity)) report(field, 'error', message('power.label.noPeak', { field }));
    else if (volts < PROBABLY_KILOVOLTS_BELOW) {
      report(field, 'doubt', message('power.label.kilovolts', { field, volts }));
    }
  }
  if (problems.some((p) => p.severity === 'error')) return problems;
  if (into500OhmV > openCircuitV) {
    report('into500OhmV', 'error', message('power.label.swapped', { into500OhmV, openCircuitV }));
  } else if (into500OhmV === openCircuitV) {
    report('into500OhmV', 'doubt', message('power.label.same'));
  }
  const energies = [
    ['storedJ', storedJ],
    ['outputJ', outputJ],
  ] as const;
  for (const [field, joules] of energies) {
    if (joules !== null && !(joules > 0 && joules < Infinity)) {
      report(field, 'error', message('power.label.noEnergy', { field }));
    }
  }
  if (storedJ !== null && outputJ !== null && outputJ > storedJ) {
    report('outputJ', 'error', message('power.label.moreOutThanIn', { outputJ, storedJ }));
  }
  return problems;
}
