import type { Figures, Phrase } from '../../types.ts';
import { choose } from './map/choose.ts';
import { keys } from './map/keys.ts';
import { placing } from './map/placing.ts';
import { spots } from './map/spots.ts';
import { tools } from './map/tools.ts';

/** The map, its tools, its status bar. */
export const map = {
  property: 'Map of the property',
  drawing: 'Drawing',
  toolsTitle: 'Tools',
  tools,
  choose,
  placing,
  spots,
  keys,
  view: {
    title: 'View',
    zoomIn: 'Zoom in',
    zoomInTip: 'Zoom in (+)',
    zoomOut: 'Zoom out',
    zoomOutTip: 'Zoom out (-)',
    whole: 'All of the property',
    wholeTip: 'Whole property (Home)',
    all: 'All',
  },
  voltage: {
    title: 'Estimated peak voltage',
    under: ({ volts }: { volts: number }, f: Figures) => `under ${f.volts(volts)}`,
    dead: 'dead, 0 V',
    notKnownHere: ({ line }: { line: string }) => `${line}: the voltage is not known.`,
    deadHere: ({ line }: { line: string }) => `${line}: dead, 0 V.`,
    here: ({ line, volts }: { line: string; volts: number }, f: Figures) =>
      `${line}: about ${f.volts(volts)} here (estimate).`,
    lowHere: ({ line, volts, minimumV }: { line: string; volts: number; minimumV: number }, f: Figures) =>
      `${line}: about ${f.volts(volts)} here (estimate), under the ${f.volts(minimumV)} that hold the stock.`,
    /** The name of a line on the map, with what its middle reads. */
    label: ({ line, volts }: { line: string; volts: number }, f: Figures) =>
      volts === 0 ? `${line}: dead` : `${line}: ${f.volts(volts)}`,
  },
  /** A crossing's label. */
  overhead: 'overhead',
  /** Along the edges of the grid, with the figure and its unit. */
  grid: {
    east: ({ figure }: { figure: string }) => `${figure} E`,
    west: ({ figure }: { figure: string }) => `${figure} W`,
    north: ({ figure }: { figure: string }) => `${figure} N`,
    south: ({ figure }: { figure: string }) => `${figure} S`,
  },
  status: {
    width: 'Width',
    length: 'Length',
    bearing: 'Bearing',
    all: ({ totalM }: { totalM: number }, f: Figures) => `all ${f.length(totalM)}`,
    goTo: 'Go to…',
    goToTip: 'Go to coordinates (Alt+G)',
    coordinates: 'Coordinates to go to',
    coordinatesThenEnter: 'Coordinates, then Enter',
    swap: ({ problem }: { problem: Phrase }, f: Figures) => `${f.say(problem)} Press Enter again to swap them.`,
  },
  typed: {
    noLength: ({ text }: { text: string }) =>
      `"${text}" is no length. Type a number, with m, km or ft behind it if need be.`,
    lengthRange: ({ mostM }: { mostM: number }, f: Figures) =>
      `The length must be more than 0 and at most ${f.length(mostM)}.`,
    noBearing: ({ text }: { text: string }) => `"${text}" is no bearing. Type degrees clockwise from north, 0 to 360.`,
  },
  /** At the foot of the picture of the whole property. */
  picture: {
    caution: 'For planning. Prove the fence dead before work; have buried services located before digging.',
    inventedCaution:
      'An invented example. For planning. Prove the fence dead before work; have buried services located before digging.',
  },
};
