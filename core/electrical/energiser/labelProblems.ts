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
  readonly message: string;
}

/** Below this a peak "in volts" is surely in kilovolts: no energiser gives so little (common practice, no source). */
const PROBABLY_KILOVOLTS_BELOW = 100;

/** Whether an energiser's label figures make sense, field by field. */
export function labelProblems(label: EnergiserLabel): LabelProblem[] {
  const { openCircuitV, into500OhmV, storedJ, outputJ } = label;
  const problems: LabelProblem[] = [];
  const report = (field: LabelProblem['field'], severity: LabelProblem['severity'], message: string): void => {
    problems.push({ field, severity, message });
  };
  const peaks: [LabelProblem['field'], number, string][] = [
    ['openCircuitV', openCircuitV, 'open-circuit peak'],
    ['into500OhmV', into500OhmV, 'peak into 500 ohm'],
  ];
  for (const [field, volts, name] of peaks) {
    if (!(volts > 0 && volts < Infinity)) report(field, 'error', `Enter the ${name} in volts, above 0.`);
    else if (volts < PROBABLY_KILOVOLTS_BELOW) {
      report(field, 'doubt', `The ${name} is ${volts} V; if the label says ${volts} kV, enter ${volts * 1000}.`);
    }
  }
  if (problems.some((p) => p.severity === 'error')) return problems;
  if (into500OhmV > openCircuitV) {
    const message = `The peak into 500 ohm (${into500OhmV} V) can't be above the open-circuit peak (${openCircuitV} V); are they the other way round?`;
    report('into500OhmV', 'error', message);
  } else if (into500OhmV === openCircuitV) {
    report('into500OhmV', 'doubt', 'Both peaks are the same, as if the energiser had no resistance; check the label.');
  }
  const energies: [LabelProblem['field'], number | null, string][] = [
    ['storedJ', storedJ, 'stored energy'],
    ['outputJ', outputJ, 'output energy'],
  ];
  for (const [field, joules, name] of energies) {
    if (joules !== null && !(joules > 0 && joules < Infinity)) {
      report(field, 'error', `Enter the ${name} in joules, above 0, or leave it empty.`);
    }
  }
  if (storedJ !== null && outputJ !== null && outputJ > storedJ) {
    const message = `An output of ${outputJ} J can't come from ${storedJ} J stored; are they the other way round?`;
    report('outputJ', 'error', message);
  }
  return problems;
}
