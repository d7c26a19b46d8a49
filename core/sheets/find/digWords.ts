import { compassWord } from '../../locate/compass.ts';
import { depthInWords } from '../../locate/depthWords.ts';
import type { Dig, DigAnswer, DigFinding } from '../../locate/digCheck.ts';
import { figures } from '../../words/figures.ts';
import { formatLength, type Units } from '../../words/numbers/write.ts';
import { capital } from '../../words/text.ts';
import type { Figures } from '../../words/types.ts';

/** Said with every answer of a dig check. */
export const onlyWhatIsInTheFile =
  'Only what is in this file is known. Anything else may be buried here: have all services located before you dig.';

/** "2.10 m north-east" */
export function awayInWords({ distanceM, bearingDeg, thing }: DigFinding, units: Units): string {
  if (bearingDeg === null) return thing.inGround ? 'in the dig' : 'drawn across the dig';
  return `${formatLength(distanceM, units)} ${figures(units).words.things.compass[compassWord(bearingDeg)]}`;
}

export function verdictInWords({ overlap, thing }: DigFinding): string {
  if (!thing.inGround) return `Planned here, not in the ground as far as this file knows`;
  return overlap ? 'May lie in the dig' : 'Near';
}

/** How far off the distance may be, and what the place of the thing rests on. */
export function errorInWords({ thing, errorM }: DigFinding, units: Units): string {
  if (!thing.inGround) return 'Its place is as drawn';
  const assumed = thing.basis === 'drawn' || thing.basis === 'contradictory' ? ', so assumed' : '';
  const ways = thing.ways.length > 1 ? `; the worst of ${thing.ways.length} places where it can be` : '';
  return `± ${formatLength(errorM, units)} with the dig's own (${figures(units).words.locate.basis[thing.basis]}${assumed}${ways})`;
}

/** How deep a thing lies, shallowest first; "depth not known" where nothing tells. */
export function depthOfThing({ thing: { depth } }: DigFinding, units: Units): string {
  return depth ? figures(units).say(depthInWords(depth)) : 'depth not known';
}

/** The answer in one sentence, and a second one for what is only planned. */
export function digSentence({ findings, planned }: DigAnswer, { withinM }: Dig, units: Units): string {
  const f = figures(units);
  const hit = findings.filter(({ overlap }) => overlap);
  const within = formatLength(withinM, units);
  const near = findings.length === 1 ? 'One buried thing' : `${findings.length} buried things`;
  const also = planned.length === 0 ? '' : ` ${capital(f.words.locate.state.plannedOnly)}: ${named(planned, f)}.`;
  if (findings.length === 0) return `Nothing in this file is buried within ${within} of the dig.${also}`;
  if (hit.length === 0) return `${near} within ${within}; none that the errors bring into the dig.${also}`;
  return `Do not dig yet: ${named(hit, f)} may lie in the dig.${also}`;
}

function named(findings: readonly DigFinding[], f: Figures): string {
  const names = findings.slice(0, 3).map(({ thing }) => f.say(thing.name));
  return `${names.join(', ')}${findings.length > 3 ? ` and ${findings.length - 3} more` : ''}`;
}
