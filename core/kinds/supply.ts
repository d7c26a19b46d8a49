import { note, ownName, status } from './common.ts';
import { kind } from './describe.ts';
import { flag, lengthM, looseReference, number, orNone, path, place, reference, whole } from './fields.ts';

const energyJ = number('J', { above: true, max: 1000 });

/** Figures until its label is read: those of a middling mains unit, invented. */
export const energiser = kind('energiser', {
  prefix: 'E',
  uniqueName: true,
  lists: ['drawing', 'keptPlan', 'handover', 'changes', 'exchange', 'network', 'counted'],
  fields: {
    name: ownName,
    at: place({ ownEdit: true }),
    /** Open-circuit peak. */
    openCircuitV: number('V', {
      min: 500,
      max: 20_000,
      decimals: 0,
      column: true,
      default: 8000,
    }),
    /** Peak into the standard's 500 ohm load. */
    into500OhmV: number('V', {
      min: 100,
      max: 20_000,
      decimals: 0,
      default: 6000,
      column: 'into_500_ohm_v',
    }),
    storedJ: orNone(energyJ, { column: true, default: null }),
    outputJ: orNone(energyJ, { column: true, default: null }),
    status,
    note,
  },
});

/** Insulated cable from an energiser (first vertex) to the fence (last vertex). */
export const leadOut = kind('leadOut', {
  prefix: 'L',
  lists: ['drawing', 'keptPlan', 'handover', 'changes', 'exchange', 'network', 'counted'],
  fields: {
    name: ownName,
    energiserId: reference('energiser', { ownEdit: true, column: 'energiser' }),
    path: path(2, { ownEdit: true }),
    cableId: looseReference('conductor', { column: 'cable' }),
    buried: flag({ column: true }),
    status,
    note,
  },
});

/** The driven rods of one energiser. Three of 1.8 m, about one rod length and more apart; common practice, no source. */
export const earthField = kind('earthField', {
  lists: ['drawing', 'keptPlan', 'handover', 'changes', 'exchange', 'counted', 'plain'],
  fields: {
    energiserId: reference('energiser', { ownEdit: true, column: 'energiser' }),
    at: place(),
    rods: whole({ unit: 'rods', min: 1, max: 100, column: true, default: 3 }),
    rodLengthM: lengthM({ min: 0.3, max: 10, column: true, default: 1.8 }),
    rodDiameterMm: number('mm', { min: 5, max: 100, decimals: 0, column: true, default: 16 }),
    spacingM: lengthM({ min: 0.3, max: 50, column: true, default: 3 }),
    status,
    note,
  },
});
