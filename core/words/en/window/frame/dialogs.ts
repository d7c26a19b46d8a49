import type { Figures } from '../../../types.ts';

/** Dialogs: files, keys, print, and the question before an edit of the ground. */
export const dialogs = {
  /** What each is called where it can't be shown. */
  called: {
    none: 'This dialog',
    chooseFile: 'The list of files',
    chooseTileFile: 'The list of map files',
    print: 'Print map sheets',
    importMap: 'The import',
    pack: 'Handover pack',
    keys: 'The list of keys',
  },
  files: {
    open: { title: 'Open a property', act: 'Open' },
    new: { title: 'New property', act: 'Create' },
    copy: { title: 'Save a copy and go on in it', act: 'Save the copy' },
    newName: 'New property',
    copyName: ({ file }: { file: string }) => `${file} copy`,
    nothing: 'No property files in this folder.',
    name: 'Name of the property',
    replace: 'Replace the file of that name. What is in it now is lost.',
    noName: 'Type a name.',
    badSigns: 'A name can’t hold any of \\ / : * ? " < > |',
    leadingPoint: 'A name can’t begin with a point.',
    takenOrReplace: 'That name is taken here. Type another, or replace it.',
    taken: 'That name is taken here. Type another.',
    above: '↑ The folder above',
    folder: ({ name }: { name: string }) => `Folder: ${name}`,
    facts: ({ changed, kilobytes }: { changed: string; kilobytes: number }, f: Figures) =>
      `${changed} · ${f.number(kilobytes)} kB`,
  },
  ground: {
    more: ({ count }: { count: number }, f: Figures) => `And ${f.number(count)} more.`,
    caution:
      'This changes the file, not the ground. Energiser off and the fence proven dead before you touch a cable; old cable that is left in the ground is cut off at both ends.',
    continue: 'Continue',
  },
  keys: {
    title: 'Keys',
    everywhere: 'Everywhere',
    tools: 'Tools, while the map has the keyboard',
    service: 'In Draw, while the inspector is open at Services: the service selected there',
    map: 'On the map',
  },
  pdf: {
    make: 'Make the PDF',
    trueScale: 'It keeps its scale when printed at 100 %, not “fit to page”.',
    scale: ({ scale, sheets }: { scale: string; sheets: number }, f: Figures) =>
      `${scale}, ${sheets === 1 ? 'one sheet' : `up to ${f.number(sheets)} sheets`}`,
  },
  print: {
    title: 'Print map sheets',
    paper: 'Paper',
    orientation: 'Orientation',
    landscape: 'Landscape',
    portrait: 'Portrait',
    scale: 'True scale',
    otherScale: 'Another scale',
    scaleHint: 'Over several sheets, a sketch shows how they lie.',
    scaleOneTo: 'Scale, 1 to',
    after: 'On the pages after the map',
    switches: 'Switch register',
    crossings: 'Crossing schedule',
    tests: 'A test sheet for each section',
  },
};
