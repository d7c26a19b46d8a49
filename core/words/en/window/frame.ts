import type { Figures } from '../../types.ts';
import { commands } from './frame/commands.ts';
import { dialogs } from './frame/dialogs.ts';

const several = { error: 'wrong', warning: 'to look at', notKnown: 'not known', hint: 'to do next' };

/** The window around the workspaces: welcome, File menu, dialogs, commands, problems, parts. */
export const frame = {
  commands,
  dialogs,
  /** What many places say. */
  common: {
    close: 'Close',
    cancel: 'Cancel',
    stop: 'Stop',
    name: 'Name',
    note: 'Note',
    set: 'Set',
    show: 'Show',
    tryAgain: 'Try again',
  },
  title: ({ file }: { file: string }) => `${file} - Undergate`,
  opening: 'Opening…',
  /** What a part of the window is called where it can't be shown. */
  parts: {
    window: 'This window',
    map: 'The map',
    inspector: 'The inspector',
    welcome: 'The welcome page',
    groundQuestion: 'The question what lies in the ground',
    selected: 'What is selected',
    picture: 'The picture that comes in',
  },
  fault: {
    title: ({ what }: { what: string }) => `${what} can’t be shown`,
    happened: ({ why }: { why: string }) => `What happened: ${why}.`,
    goOn: 'What was saved is in the file. Try again, or go on elsewhere; undo the last step if it came with that. If it comes again, close the window and start Undergate again.',
    inWindow: ({ why }: { why: string }) => `Something went wrong in this window: ${why}.`,
    inWindowRemedy:
      'What was saved is in the file. Go on; if it comes again, close the window and start Undergate again.',
    noReason: 'no reason given',
    startAgain: 'Close the window and start Undergate again.',
    hostLost: ({ why }: { why: string }) => `This window cannot reach Undergate's own host: ${why}`,
  },
  inspector: {
    name: 'Inspector',
    width: 'Width of the inspector',
    workspaces: 'Workspaces',
    pages: {
      cover: 'File menu',
      draw: 'Draw',
      divide: 'Divide',
      power: 'Power',
      order: 'Order',
      record: 'Record',
      find: 'Find',
    },
    fileMenu: 'File menu: export, print',
    fileMenuTip: 'The property, its files, import, export and print · Alt+0',
    writing: 'Writing to the file…',
    allSaved: 'Everything is saved as you work.',
  },
  /** What the last line says of what was done. */
  done: {
    saved: ({ label }: { label: string }) => `${label}. Saved.`,
    cancelled: ({ label }: { label: string }) => `${label}: cancelled, nothing was changed.`,
    copied: 'Saved. From now on changes go into the copy.',
    holdsUnknown: 'This file holds details that this version does not know. They are kept.',
    notSavedAnyMore: 'Nothing is saved any more: save a copy under a new name.',
    made: ({ file }: { file: string }) => `${file} is made.`,
    makingPdf: 'Making the PDF…',
    pdfNotMade: ({ why }: { why: string }) => `The PDF could not be made: ${why}.`,
    pdfNotMadeRemedy: 'Nothing was changed. Try again.',
  },
  notLetIn: {
    section: 'To open Undergate again',
    why: 'Each window of Undergate is opened by an address that works once, so that nobody else on this machine can get in. Have a new one written in the terminal where you started Undergate, and paste it in the address bar above.',
    write: 'Write a new address',
    written: 'A new address now stands in the terminal where Undergate runs. It is good for two minutes.',
    orRestart:
      'Or end Undergate in that terminal (Ctrl+C) and start it again with npm start: all that was saved is in the file.',
  },
  welcome: {
    job: 'Plan an electric-fence network, record what is buried under each gateway, and find it again years later.',
    ways: 'Ways to begin',
    draw: 'Draw on the grid',
    drawMeans: 'Start a new property on a blank metric grid. Draw its fences, place the gateways, then the energiser.',
    goOn: 'Go on with a property',
    goOnMeans:
      'Open a property file (its name ends in .undergate). Fences from another program come in as GeoJSON, from the File menu.',
    example: 'Look at an example',
    exampleMeans: 'An invented farm of about 600 ha with everything in it. It opens as a copy: change it as you like.',
    openExample: 'Open the example',
    recent: 'Opened lately',
    gone: ({ path }: { path: string }) => `${path} (no longer there)`,
    caution:
      'Undergate helps to plan and to remember. It replaces neither local rules nor licensed work: turn the energiser off and prove the fence dead before touching it, and have other buried services located before you dig.',
  },
  fileMenu: {
    invented: 'An invented example. No such property exists.',
    print: 'Print',
    export: 'Export',
    import: 'Import',
    heights: 'Heights of the ground',
    files: 'Files',
    everyChange: 'Every change is written to this file at once; there is nothing to save.',
    saveCopy: 'Save a copy',
    property: 'The property',
    window: 'This window',
    units: 'Units',
    metric: 'Metric: m, km, ha',
    imperial: 'Imperial: ft, mi, ac',
    join: 'Join ends closer than',
    renamed: 'Rename the property',
    noteChanged: 'Change the note',
    unitsChanged: 'Change the units',
    joinChanged: 'Change what counts as joined',
    numbers: 'Numbers and dates',
    numbersHint:
      'On the screen and on paper, and as they are typed. The words stay English; files for other programs have points for decimals and days as 2026-05-12.',
    asSystem: ({ sample }: { sample: string }) => `As the system: ${sample}`,
    asPlace: ({ place, sample }: { place: string; sample: string }) => `${place}: ${sample}`,
  },
  caution: 'Caution.',
  findings: {
    signs: { error: 'Wrong', warning: 'Look at', notKnown: 'Not known', hint: 'Next' },
    what: 'the checks',
    checking: 'Checking the drawing…',
    section: 'What the checks found',
    fewer: 'Show fewer',
    /** Numbers by how grave they are, the gravest first; those of none are left out. */
    more: ({ counts }: { counts: readonly (readonly [severity: keyof typeof several, count: number])[] }) =>
      `And ${counts.map(([severity, count]) => `${count} ${several[severity]}`).join(', ')}`,
    labelled: ({ sign }: { sign: string }) => `${sign}:`,
    source: ({ source }: { source: string }) => `Source: ${source}`,
    less: 'Less',
    whatToDo: 'What to do',
  },
  register: {
    before: ({ count }: { count: number }, f: Figures) => `Show more (${f.number(count)} before)`,
    after: ({ count }: { count: number }, f: Figures) => `Show more (${f.number(count)} left)`,
  },
  workedOut: {
    working: ({ what }: { what: string }) => `Working out ${what}…`,
    stale: 'Before the last change. Working it out again…',
    current: 'For the drawing as it is now.',
    failed: ({ what, why }: { what: string; why: string }) =>
      `${what} could not be worked out (${why}). The drawing is safe in the file; each change is another try.`,
  },
  fields: {
    empty: ({ label }: { label: string }) => `${label} can't be empty.`,
    steps: {
      change: 'Change',
      rename: ({ name }: { name: string }) => `Rename ${name}`,
      mark: ({ name, as }: { name: string; as: string }) => `Mark ${as}: ${name}`,
      changeOf: ({ field, name }: { field: string; name: string }) => `Change the ${field} of ${name}`,
      delete: ({ name }: { name: string }) => `Delete ${name}`,
      deleteSeveral: ({ count }: { count: number }, f: Figures) => `Delete ${f.number(count)} things`,
    },
  },
};
