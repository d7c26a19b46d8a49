import type { Figures } from '../../../types.ts';

/** Each energiser by its label, with what the fence makes of it. */
export const supply = {
  empty: 'No energiser yet. In Draw press E, place it, and lead out to the fence.',
  caution:
    'Only an electrician works on the mains side. Before anyone touches fence, lead-out or earth stakes: energiser off, fence proven dead with a tester.',
  energiser: ({ name }: { name: string }) => `Energiser ${name}`,
  atTerminals: 'At its terminals',
  current: 'Peak current',
  amperes: ({ current }: { current: number }, f: Figures) => `${f.number(current, 1)} A`,
  fence: 'Fence it feeds',
  ownResistance: "Energiser's own resistance",
  ohm: ({ ohm }: { ohm: number }, f: Figures) => `${f.number(ohm, ohm < 100 ? 1 : 0)} ohm`,
  noLoad: 'no load',
  formula:
    "Energiser's own resistance: 500 (V with no load - V into 500) / V into 500, from the label. A real energiser is a charged capacitor and a transformer, so this fits best near 500 ohm. All figures but the label's are estimates.",
  cableOf: ({ name }: { name: string }) => `Cable of lead-out ${name}`,
  cableStep: ({ name }: { name: string }) => `Change the cable of ${name}`,
  needed: 'Energiser needed:',
  wouldHold: (
    { openCircuitV, into500OhmV, leastV }: { openCircuitV: number; into500OhmV: number; leastV: number },
    f: Figures,
  ) =>
    `about ${f.volts(openCircuitV)} with no load and ${f.volts(into500OhmV)} into 500 ohm would just hold ${f.volts(leastV)} everywhere, with the same resistance inside.`,
  gives: ({ margin }: { margin: number }, f: Figures) =>
    margin >= 1
      ? `This one gives ${f.number(margin, 1)} times that.`
      : `This one gives ${f.number(100 * margin, 0)} % of that.`,
};
