import type { Figures } from '../../types.ts';

/** What each kind of service is called on paper. */
const services = {
  powerLine: 'power line',
  waterPipe: 'water pipe',
  gasPipe: 'gas pipe',
  dataCable: 'data cable',
  drain: 'drain',
  road: 'road',
  path: 'path',
  creek: 'creek',
  floodZone: 'flood zone',
  earthElectrode: 'mains or phone earth',
};

/** The map, what stands beside it, and the index of its sheets. */
export const map = {
  /** Names on it. */
  crossingAt: ({ gateway }: { gateway: string }) => `crossing at ${gateway}`,
  unnamedPaddock: 'unnamed paddock',
  section: ({ letter }: { letter: string }) => `section ${letter}`,
  withArea: ({ name, area }: { name: string; area: string }) => `${name} (${area})`,
  leftThing: ({ name, fate }: { name: string; fate: string }) => `${name}: ${fate}`,
  services,
  /** One whose name does not say what it is. */
  service: ({ name, what }: { name: string; what: keyof typeof services }) => `${name}, ${services[what]}`,
  /** Letters set into the lines of services that look alike otherwise. */
  letters: { powerLine: 'PL', waterPipe: 'W', gasPipe: 'GAS', dataCable: 'D', drain: 'DR' },
  /** In a legend, a power line's voltage. */
  kilovolts: 'kV',
  legend: {
    title: 'Legend',
    liveFence: 'live fence: planned, built',
    deadFence: 'non-electric fence: planned, built',
    gateway: 'gateway: planned, built',
    buriedCrossing: 'buried crossing: planned, built',
    overheadCrossing: 'overhead crossing',
    switch: 'cut-out switch: on, off (open)',
    switchBuilt: 'cut-out switch, built',
    energiser: 'energiser: planned, built',
    earthStakes: 'earth stakes',
    leadOut: 'lead-out cable (dashed: buried)',
    inGround: 'left in the ground: may be live, dead',
    strainer: 'strainer',
    anglePost: 'angle post',
    otherPost: 'other post',
    buriedService: ({ what }: { what: keyof typeof services }) => `${services[what]}, buried`,
    grid: 'grid',
  },
  /** Figures at its frame, from the origin. */
  frame: {
    east: ({ figure }: { figure: string }) => `${figure} E`,
    west: ({ figure }: { figure: string }) => `${figure} W`,
    north: ({ figure }: { figure: string }) => `${figure} N`,
    south: ({ figure }: { figure: string }) => `${figure} S`,
  },
  panel: {
    cautions: 'Cautions',
    sections: 'Sections',
    withoutRoom: 'On the map without room for a name',
    scale: 'Scale',
    scaleOn: ({ scale, paper }: { scale: string; paper: string }) => `${scale} on ${paper}`,
    scaleHeading: ({ scale, paper }: { scale: string; paper: string }) => `Scale ${scale} on ${paper}`,
    bar: ({ lengthMm }: { lengthMm: number }, f: Figures) =>
      `The bar is ${f.number(lengthMm, 1)} mm long on a true print.`,
    grid: 'Grid',
    metresFromOrigin: "metres from the drawing's origin; not yet placed on the earth",
    feetFromOrigin: "feet from the drawing's origin; not yet placed on the earth",
    metresFrom: ({ place }: { place: string }) => `metres from ${place} (WGS 84)`,
    feetFrom: ({ place }: { place: string }) => `feet from ${place} (WGS 84)`,
    date: 'Date',
    continued: 'Beside the map sheets, continued',
  },
  sheet: {
    one: 'Map sheet',
    of: ({ number, of }: { number: number; of: number }, f: Figures) =>
      `Map sheet ${f.number(number)} of ${f.number(of)}`,
    networkOne: 'Fence network, map sheet',
    networkOf: ({ number, of }: { number: number; of: number }, f: Figures) =>
      `Fence network, map sheet ${f.number(number)} of ${f.number(of)}`,
    /** What the picture is, read aloud. */
    described: ({ sheet, property, scale }: { sheet: string; property: string; scale: string }) =>
      `${sheet} of ${property} at ${scale}`,
    /** Beyond an edge. */
    next: ({ number }: { number: number }, f: Figures) => `Sheet ${f.number(number)}`,
    nothingDrawn: 'Nothing is drawn on this property yet.',
    blank: 'Nothing of the property lies on this sheet.',
  },
  index: {
    title: 'Index of map sheets',
    network: ({ count }: { count: number }, f: Figures) => `Fence network, index of ${f.number(count)} map sheets`,
    sheets: 'Sheets',
    described: ({ property, count }: { property: string; count: number }, f: Figures) =>
      `Sketch of ${property} with ${f.number(count)} map sheets laid over it`,
    overlap: 'Neighbouring sheets overlap; the margin of each names the next.',
    fits: ({ paper, scale }: { paper: string; scale: string }) =>
      `On one sheet of ${paper} the whole property fits at ${scale}.`,
  },
  /** Why it can't be printed as asked. */
  problem: {
    scale: ({ scaleDenominator }: { scaleDenominator: number }) => `A map cannot be printed at 1:${scaleDenominator}.`,
    scaleRemedy: 'Select a scale between 1:1 and 1:10,000,000, such as 1:5,000.',
    tooMany: (
      { scale, count, paper, most }: { scale: string; count: number; paper: string; most: number },
      f: Figures,
    ) =>
      `At ${scale} the property would take ${f.number(count)} map sheets of ${paper}; ${f.number(most)} is the most.`,
    farAway: 'Look for a line that was drawn far away from the others by mistake, or print one part of the property.',
    fitsAt: ({ scale }: { scale: string }) =>
      `It fits one sheet at ${scale}. Select a scale nearer to that, or print one part of the property.`,
    landscape: ({ paper }: { paper: string }) => `${paper} landscape`,
    portrait: ({ paper }: { paper: string }) => `${paper} portrait`,
  },
};
