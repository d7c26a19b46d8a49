import type { LonLat } from '../../geometry/types.ts';
import { called } from '../../model/edits/support/find.ts';
import type { Kind, Service, ServiceKind } from '../../model/things.ts';
import { capital } from '../../words/text.ts';
import type { Finding, Fix } from '../finding.ts';

/** Where rules come from. */
export const standard = 'IEC 60335-2-76, Annex BB, BB.1 (paraphrased)';
export const commonPractice = 'common practice, no source';
export const assumption = 'an assumption of this project';

interface Parts {
  readonly message: string;
  readonly remedy: string;
  readonly source?: string;
  readonly at?: LonLat | null;
  readonly fixes?: readonly Fix[];
  /** Tells several findings about the same things apart. */
  readonly part?: string | number;
}

/** A finding whose identity is its rule and what it is about. */
export function finding(
  rule: string,
  severity: Finding['severity'],
  thingIds: readonly string[],
  { message, remedy, source, at, fixes, part }: Parts,
): Finding {
  const about = [...thingIds].sort().join(',');
  const id = `${rule}:${about}${part === undefined ? '' : `#${part}`}`;
  return { id, rule, severity, message, remedy, source: source ?? null, thingIds, at: at ?? null, fixes: fixes ?? [] };
}

/** A thing by kind and name at the head of a sentence: "Gateway G4". */
export function headed(thing: { readonly kind: Kind; readonly name?: string }): string {
  return capital(called(thing));
}

/** "F1", "F1 and F2", "F1, F2 and 3 more". */
export function listed(names: readonly string[], most = 4): string {
  const shown = names.length > most ? [...names.slice(0, most - 1), `${names.length - most + 1} more`] : names;
  return shown.length < 2 ? (shown[0] ?? '') : `${shown.slice(0, -1).join(', ')} and ${shown.at(-1)}`;
}

const serviceWords: Readonly<Record<ServiceKind, string>> = {
  powerLine: 'power line',
  waterPipe: 'water pipe',
  gasPipe: 'gas pipe',
  dataCable: 'data cable',
  drain: 'drain',
  road: 'road',
  path: 'path',
  creek: 'creek',
  floodZone: 'flood zone',
  earthElectrode: 'earth electrode',
};

/** A service in a sentence: the power line "Overhead line, 11 kV". */
export function theService({ what, name }: Service): string {
  return `the ${serviceWords[what]} "${name}"`;
}
