import type { Figures } from '../../../types.ts';
import { ohmFigure } from '../../power/conductors.ts';
import { type BasisValues, basisAtHead } from '../../power/sources.ts';

/** What the estimate rests on: the stock, the growth, the wire. */
export const basics = {
  stock: {
    title: 'Stock',
    least: 'Least peak that holds the stock',
    hint: 'Common practice, no source; the stock have the last word.',
    step: 'Change the least voltage',
    choice: ({ volts, stock }: { volts: number; stock: string }, f: Figures) => `${f.volts(volts)}: ${stock}`,
  },
  growth: {
    title: 'Growth',
    onAll: 'Grass and weeds on the wires, on the whole property',
    own: 'Own figure',
    hint: ({ kilohm, basis }: { kilohm: number; basis: BasisValues }, f: Figures) =>
      `Each km of each live wire leaks through ${f.number(kilohm, 0)} kilohm. ${basisAtHead(basis, f)}. Readings, fitted, go before it.`,
    leakage: 'Leakage of one km of one live wire',
    step: 'Change the growth',
    leakageStep: 'Change the leakage',
    noExceptions: 'A fence can have growth of its own: select it on the map.',
    exceptions: ({ names }: { names: readonly string[] }, f: Figures) =>
      `${f.number(names.length, 0)} ${f.plural(names.length, { one: 'fence has', other: 'fences have' })} growth of its own: ${f.list(names, 9)}.`,
  },
  conductors: {
    title: 'Wire and cable',
    own: 'Your own entries: used by their figure',
    empty: 'None. Poly-wire, tape and rope differ from make to make: enter the figure on the reel.',
    name: 'Name',
    ohmPerKm: 'Ohm per km',
    add: 'Enter a conductor',
    /** What a new one is called at first. */
    newName: 'Own conductor',
    clear: 'Clear selection',
    library: ({ count }: { count: number }, f: Figures) =>
      `The library: ${f.number(count)} conductors, where each figure is from`,
    caption: 'At 20 °C. n live wires side by side, joined at both ends, have an n-th of it.',
    conductor: 'Conductor',
    trade: 'Trade tables',
    figure: ({ ohmPerKm }: { ohmPerKm: number }, f: Figures) => ohmFigure(ohmPerKm, f),
    about: ({ ohmPerKm }: { ohmPerKm: number }, f: Figures) => `about ${ohmFigure(ohmPerKm, f)}`,
    tradeHint:
      'Trade tables: common practice, no source; shown beside, not used. So are the cores that lead-out cable is sold with, and its rating of 10 kV or more.',
    rename: ({ name }: { name: string }) => `Rename ${name}`,
    changeOhm: ({ name }: { name: string }) => `Change the resistance of ${name}`,
    ifCable: ({ caution }: { caution: string }) => `If it is a cable: ${caution}`,
  },
};
