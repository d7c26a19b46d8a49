import type { Figures, ThingRef } from '../types.ts';
import { conductors } from './power/conductors.ts';
import { earth } from './power/earth.ts';
import { answer, improvements } from './power/estimate.ts';
import { type BasisValues, basisInWords, sources } from './power/sources.ts';

/** Figures that may be no number at all are said as they are. */
type Raw = string;
type AtNode = { readonly index: number; readonly node: Raw; readonly mostNode: number };
type Joins = { readonly index: number; readonly from: Raw; readonly to: Raw; readonly mostNode: number };

const peaks = { openCircuitV: 'output with no load', into500OhmV: 'output into 500 ohm' };
const energies = { storedJ: 'stored energy', outputJ: 'output energy' };

const most = 4;

/** What is said of the supply: why a voltage is not known, what an estimate leaves out, what a label says. */
export const power = {
  answer,
  conductors,
  earth,
  improvements,
  sources,
  /** What a figure rests on. */
  basis: (basis: BasisValues, f: Figures) => basisInWords(basis, f),
  growth: { clean: 'New and clean', light: 'Light growth', heavy: 'Heavy growth' },
  stock: {
    shortHaired: 'Short-haired cattle',
    longHaired: 'Long-haired cattle, sheep',
    pressed: 'Any stock under high pressure',
  },
  /** Why a voltage is not known, or what its estimate leaves out. */
  problems: {
    noLiveFence: 'No live fence is drawn, so there is no voltage to estimate.',
    noLiveFenceRemedy: 'Draw the fences, and mark those live that carry current.',
    noEnergiser: 'No energiser is drawn, so the voltage is not known.',
    noEnergiserRemedy: 'Place the energiser and its lead-out in Draw, and enter the figures on its label.',
    energiserTouchesNothing: ({ name }: { name: string }) => `Energiser ${name} touches no live fence.`,
    energiserTouchesNothingRemedy: 'Draw its lead-out to the fence.',
    twoEnergisers: ({ names }: { names: readonly string[] }, f: Figures) =>
      `${f.list(names, most)} can feed the same fence, so no voltage is estimated for it. One fence is never fed by two energisers.`,
    label: ({ name, problem }: { name: string; problem: Said }, f: Figures) => `Energiser ${name}: ${f.say(problem)}`,
    labelRemedy: 'Correct the figures under Supply.',
    noEarthStakes: ({ name }: { name: string }) =>
      `No earth stakes are drawn for ${name}: the estimate leaves their resistance out and reads too high.`,
    noEarthStakesRemedy: 'Add its earth stakes under Earth.',
    unknownConductor: ({ of }: { of: Conducting }, f: Figures) =>
      `The resistance of ${conducting(of, f)} is not known, so no voltage is estimated for the fence it is part of.`,
    unknownConductorRemedy: 'Select a conductor from the list, or enter your own with its ohm per km.',
    badFigure: ({ thing, problem }: { thing: ThingRef; problem: Said }, f: Figures) =>
      `${f.headed(thing)}: ${f.say(problem)}`,
    badFigureRemedy: 'Correct the figure; until then no voltage is estimated for this fence.',
  },
  /** What makes no sense on an energiser's label. */
  label: {
    noPeak: ({ field }: { field: keyof typeof peaks }) => `Enter the ${peaks[field]} in volts, above 0.`,
    kilovolts: ({ field, volts }: { field: keyof typeof peaks; volts: number }) =>
      `The ${peaks[field]} is ${volts} V; if the label says ${volts} kV, enter ${volts * 1000}.`,
    swapped: ({ into500OhmV, openCircuitV }: { into500OhmV: number; openCircuitV: number }, f: Figures) =>
      `The ${peaks.into500OhmV} (${f.number(into500OhmV)} V) can't be above the ${peaks.openCircuitV} (${f.number(openCircuitV)} V); are they the other way round?`,
    same: 'Both outputs are the same, as if the energiser had no resistance; check the label.',
    noEnergy: ({ field }: { field: keyof typeof energies }) =>
      `Enter the ${energies[field]} in joules, above 0, or leave it empty.`,
    moreOutThanIn: ({ outputJ, storedJ }: { outputJ: number; storedJ: number }, f: Figures) =>
      `An output of ${f.number(outputJ)} J can't come from ${f.number(storedJ)} J stored; are they the other way round?`,
  },
  /** Why a circuit can't be solved. */
  circuit: {
    nodeCount: ({ count }: { count: Raw }) => `A network needs at least one node; it says ${count}.`,
    spanNodes: ({ index, from, to, mostNode }: Joins) =>
      `Run ${index} joins nodes ${from} and ${to}; nodes go from 0 to ${mostNode}.`,
    spanLength: ({ index, lengthM }: { index: number; lengthM: Raw }) =>
      `Run ${index} is ${lengthM} m long; give a length of 0 m or more.`,
    spanOhm: ({ index, ohmPerKm }: { index: number; ohmPerKm: Raw }) =>
      `Run ${index} has ${ohmPerKm} ohm/km; give 0 or more, or leave the run out if it is cut.`,
    spanLeakage: ({ index, ohmKm }: { index: number; ohmKm: Raw }) =>
      `Run ${index} leaks through ${ohmKm} ohm km; give a figure above 0, or put a fault there.`,
    spanRange: ({ index, lengthM, ohmPerKm, ohmKm }: { index: number; lengthM: Raw; ohmPerKm: Raw; ohmKm: Raw }) =>
      `Run ${index} has figures no fence can have (${lengthM} m, ${ohmPerKm} ohm/km, ${ohmKm} ohm km); check their units.`,
    linkNodes: ({ index, from, to, mostNode }: Joins) =>
      `Link ${index} joins nodes ${from} and ${to}; nodes go from 0 to ${mostNode}.`,
    linkOhm: ({ index, ohm }: { index: number; ohm: Raw }) =>
      `Link ${index} has ${ohm} ohm; give 0 or more, or mark it open.`,
    faultNode: ({ index, node, mostNode }: AtNode) =>
      `Fault ${index} is at node ${node}; nodes go from 0 to ${mostNode}.`,
    faultOhm: ({ index, ohm }: { index: number; ohm: Raw }) =>
      `Fault ${index} has ${ohm} ohm; give 0 (a dead short) or more.`,
    sourceNode: ({ node, mostNode }: { node: Raw; mostNode: number }) =>
      `The energiser is at node ${node}; nodes go from 0 to ${mostNode}.`,
    sourceVolts: ({ volts }: { volts: Raw }) => `The energiser gives ${volts} V with no load; give 0 V or more.`,
    shortAcrossSource:
      'A dead short lies straight across an energiser with no internal resistance, so its current would have no limit. Enter the energiser’s own resistance (from its output with no load and its output into 500 ohm), or the fault’s.',
    noLink: ({ link, mostLink }: { link: Raw; mostLink: number }) =>
      `There is no link ${link}; links go from 0 to ${mostLink}.`,
    sourceOhm: ({ ohm }: { ohm: Raw }) => `The energiser has ${ohm} ohm inside; give 0 or more.`,
  },
  /** Why readings can't be fitted. */
  fit: {
    noReading: 'There is no voltage reading near a live fence to fit.',
    noAnswer: 'The network has no answer with these switches; check the energiser and dead shorts.',
    noSection: 'There is no section to fit.',
    unknownRun: ({ name, index }: { name: string; index: Raw }) =>
      `${name} names run ${index}, which is not in the network.`,
    runTwice: ({ index, name, other }: { index: number; name: string; other: string }) =>
      `Run ${index} is in ${other} and in ${name}; put it in one of them.`,
    noLeak: ({ name }: { name: string }) => `${name} has no run that leaks; give its fence a growth class.`,
    unknownNode: ({ index, node }: { index: number; node: Raw }) =>
      `Reading ${index} is at node ${node}, which is not in the network.`,
    volts: ({ index, volts }: { index: number; volts: Raw }) => `Reading ${index} is ${volts} V; enter 0 V or more.`,
    sigma: ({ index, volts }: { index: number; volts: Raw }) =>
      `Reading ${index} has an error of ${volts} V; enter more than 0 V.`,
    unknownSwitch: ({ index, link }: { index: number; link: Raw }) =>
      `Reading ${index} names switch ${link}, which is not in the network.`,
  },
};

type Said = Parameters<Figures['say']>[0];

/** What a conductor is part of. */
type Conducting =
  | { readonly on: 'crossing'; readonly name: string }
  | { readonly on: 'leadOut'; readonly name: string }
  | { readonly on: 'fence'; readonly type: string | null; readonly lines: readonly string[] };

function conducting(of: Conducting, f: Figures): string {
  if (of.on === 'crossing') return `the cable under gateway ${of.name}`;
  if (of.on === 'leadOut') return `the cable of lead-out ${of.name}`;
  const lines = f.list(of.lines, most);
  return of.type === null ? `${lines}, whose fence type is missing,` : `the wire of fence type "${of.type}" (${lines})`;
}
