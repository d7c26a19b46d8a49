import type { ServiceKind } from './things.ts';

/** How a kind of service is drawn, and what it is taken to be until the user says otherwise. */
export interface ServiceFacts {
  readonly shape: 'line' | 'area' | 'point';
  readonly buried: boolean;
}

function facts(shape: ServiceFacts['shape'], buried: boolean): ServiceFacts {
  return { shape, buried };
}

export const serviceFacts: { readonly [K in ServiceKind]: ServiceFacts } = {
  powerLine: facts('line', false),
  waterPipe: facts('line', true),
  gasPipe: facts('line', true),
  dataCable: facts('line', true),
  drain: facts('line', true),
  road: facts('line', false),
  path: facts('line', false),
  creek: facts('line', false),
  floodZone: facts('area', false),
  earthElectrode: facts('point', true),
};

export const serviceKinds = Object.keys(serviceFacts) as readonly ServiceKind[];
