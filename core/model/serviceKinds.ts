import { type Field, labelOfChoice } from '../kinds/describe.ts';
import { service } from '../kinds/surroundings.ts';
import type { ServiceKind } from './things.ts';

/** How a kind of service is called, drawn, and taken to be until the user says otherwise. */
export interface ServiceFacts {
  readonly name: string;
  readonly shape: 'line' | 'area' | 'point';
  readonly buried: boolean;
}

const what: Field<ServiceKind> = service.fields.what;

function facts(kind: ServiceKind, shape: ServiceFacts['shape'], buried: boolean): ServiceFacts {
  return { name: labelOfChoice(what, kind), shape, buried };
}

export const serviceFacts: { readonly [K in ServiceKind]: ServiceFacts } = {
  powerLine: facts('powerLine', 'line', false),
  waterPipe: facts('waterPipe', 'line', true),
  gasPipe: facts('gasPipe', 'line', true),
  dataCable: facts('dataCable', 'line', true),
  drain: facts('drain', 'line', true),
  road: facts('road', 'line', false),
  path: facts('path', 'line', false),
  creek: facts('creek', 'line', false),
  floodZone: facts('floodZone', 'area', false),
  earthElectrode: facts('earthElectrode', 'point', true),
};

export const serviceKinds = Object.keys(serviceFacts) as readonly ServiceKind[];
