import { compassWord } from '../../locate/compass.ts';
import type { Dig, DigAnswer, DigFinding } from '../../locate/digCheck.ts';
import { formatLength, type Units } from '../../model/formatUnits.ts';

/** Said with every answer of a dig check. */
export const onlyWhatIsInTheFile =
  'Only what is in this file is known. Anything else may be buried here: have all services located before you dig.';

/** "2.10 m north-east" */
export function awayInWords({ distanceM, bearingDeg }: DigFinding, units: Units): string {
  if (bearingDeg === null) return 'in the dig';
  return `${formatLength(distanceM, units)} ${compassWord(bearingDeg)}`;
}

export function verdictInWords({ overlap }: DigFinding): string {
  return overlap ? 'May lie in the dig' : 'Near';
}

const basisWords = { measured: 'measured', partly: 'partly measured', drawn: 'only drawn: assumed' } as const;

export function errorInWords({ thing, errorM }: DigFinding, units: Units): string {
  return `± ${formatLength(errorM, units)} with the dig's own (${basisWords[thing.basis]})`;
}

/** The answer in one sentence. */
export function digSentence({ findings }: DigAnswer, { withinM }: Dig, units: Units): string {
  const hit = findings.filter(({ overlap }) => overlap);
  const within = formatLength(withinM, units);
  const near = findings.length === 1 ? 'One buried thing' : `${findings.length} buried things`;
  if (findings.length === 0) return `Nothing in this file is buried within ${within} of the dig.`;
  if (hit.length === 0) return `${near} within ${within}; none that the errors bring into the dig.`;
  const names = hit.slice(0, 3).map(({ thing }) => thing.name);
  const more = hit.length > 3 ? ` and ${hit.length - 3} more` : '';
  return `Do not dig yet: ${names.join(', ')}${more} may lie in the dig.`;
}
