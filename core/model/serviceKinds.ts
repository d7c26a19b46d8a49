import type { ServiceKind } from './things.ts';

/** How a kind of service is called, drawn, and taken to be until the user says otherwise. */
export interface ServiceFacts {
  readonly name: string;
  readonly shape: 'line' | 'area' | 'point';
  readonly buried: boolean;
}

export const serviceFacts: { readonly [K in ServiceKind]: ServiceFacts } = {
  powerLine: { name: 'Power line', shape: 'line', buried: false },
  waterPipe: { name: 'Water pipe', shape: 'line', buried: true },
  gasPipe: { name: 'Gas pipe', shape: 'line', buried: true },
  dataCable: { name: 'Data cable', shape: 'line', buried: true },
  drain: { name: 'Drain', shape: 'line', buried: true },
  road: { name: 'Road', shape: 'line', buried: false },
  path: { name: 'Path', shape: 'line', buried: false },
  creek: { name: 'Creek', shape: 'line', buried: false },
  floodZone: { name: 'Ground that floods', shape: 'area', buried: false },
  earthElectrode: { name: 'Earth of another system', shape: 'point', buried: true },
};

export const serviceKinds = Object.keys(serviceFacts) as readonly ServiceKind[];
