import type { Figures, Phrase } from '../../types.ts';

type At = { readonly path: string };
type Named = { readonly kind: string; readonly id: string };

const recordOf = ({ kind, id }: Named) => `The record of ${kind} ${id}`;

const wroteInto = (path: string) =>
  `Another program wrote into ${path} while it was open here (a copy or a backup was laid over it, say)`;

/** What is said of a project file: what is wrong with it, and what to do. */
export const files = {
  damaged: {
    message: ({ what }: { what: string }) => `${what} The file was left as it is.`,
    remedy: 'Open your newest copy of it, and keep the damaged file for whoever helps you with it.',
    /** What is damaged, each a sentence. */
    file: ({ path }: At) => `${path} is damaged and can't be read safely.`,
    noProperty: ({ path }: At) => `${path} has no record of its property.`,
    bySqlite: ({ path, reason }: At & { reason: string }) => `${path}: ${reason}.`,
    step: ({ label }: { label: string }) => `The step "${label}" in the history can't be read.`,
    stepWithoutProperty: ({ label }: { label: string }) =>
      `The step “${label}” in the history would take away the record of the property.`,
    record: (values: Named) => `${recordOf(values)} can't be read.`,
    recordIn: ({ path, ...named }: Named & At) => `${recordOf(named)} in ${path} can't be read.`,
    fact: ({ path, name }: At & { name: string }) => `${path} no longer says its ${name}.`,
  },
  notOurs: {
    message: ({ path, why }: At & { why: Phrase }, f: Figures) =>
      `${path} was not opened: ${f.say(why)}. The file was left as it is.`,
    remedy: 'If you had another program add or change it, undo that there; else open your newest copy of the file.',
    leftBeside: ({ beside }: { beside: string }) =>
      `another program wrote into it, and left a part of that in the file ${beside}`,
    beyondMeasure: 'it holds tables beyond measure, which no Undergate puts there',
    version: ({ version }: { version: number }) =>
      `it says that it is of version ${version}, which no Undergate writes`,
    /** Tables and views, by SQLite's own words. */
    foreign: ({ type, name }: { type: string; name: string }) =>
      `it holds a ${type} “${name}” that no Undergate puts there`,
    changed: ({ type, name }: { type: string; name: string }) => `its ${type} “${name}” is not as Undergate makes it`,
    missing: ({ type, name }: { type: string; name: string }) => `its ${type} “${name}” is missing`,
  },
  foreignBeside: {
    message: ({ path, beside }: At & { beside: string }) =>
      `${path} was not opened: beside it lies ${beside}, which Undergate did not make and which may belong to another copy of it. Both were left as they are.`,
    remedy:
      'If another program has the file open, close it there. If you put a copy in place of the file, move what lies beside it to another folder and open it again.',
  },
  moved: {
    message: ({ path }: At) =>
      `${path} was moved, renamed or deleted while it was open, so the last change was not saved.`,
    remedy: 'Save a copy under a new name to go on with all you see, or open the file where it is now.',
    /** Seen while nobody was changing anything. */
    meanwhile: ({ path }: At) =>
      `${path} is no longer there: it was moved, renamed or deleted while it was open, or its drive is gone. Nothing can be saved in it.`,
    /** `kept`: the sentence that says where the copy is. */
    openCopy: ({ kept }: { kept: string }) => `${kept} Open that copy to go on.`,
  },
  overwritten: {
    message: ({ path }: At) =>
      `${wroteInto(path)}, so the last change was not saved. Nothing was written into what is there now.`,
    remedy: 'Save a copy under a new name to keep what you see, or open the file again to see what is in it now.',
    meanwhile: ({ path }: At) => `${wroteInto(path)}. Nothing will be written into what is there now.`,
    openCopy: ({ kept }: { kept: string }) =>
      `${kept} Open that copy to go on, or open the file again to see what is in it now.`,
  },
  fromMemory: {
    message: ({ path }: At) =>
      `${path} holds all that was drawn and recorded. What was done before it can't be undone in it.`,
    whole: 'Its photos and background maps are complete.',
  },
  kept: {
    message: ({ path }: At) =>
      `${path} was deleted while it was open here, or another program wrote into it, or its drive is gone. It was left as it is now.`,
    where: ({ copyPath }: { copyPath: string }) => `What you saw is kept in ${copyPath}.`,
    /** `lost`: the sentence that says what is not in the copy. */
    whereWithout: ({ copyPath, lost }: { copyPath: string; lost: string }) =>
      `What you saw is kept in ${copyPath}. ${lost}`,
  },
  lost: ({ photos, maps }: { photos: number; maps: readonly string[] }, f: Figures) => {
    const counted = `${f.number(photos)} ${f.plural(photos, { one: 'photo', other: 'photos' })}`;
    const parts = [...(photos > 0 ? [counted] : []), ...maps.map((name) => `the background map “${name}”`)];
    return `Not in it: ${parts.join(', ')}. They lay only in the file that was written over.`;
  },
  notKept: {
    /** `why`: the sentence that says why. */
    message: ({ path, why }: At & { why: string }) =>
      `What you see is no longer in ${path}, or that is out of reach, and it could not be kept in a copy: ${why}`,
    remedy: 'Save a copy on another disk first.',
  },
  noRoomToOpen: {
    message: ({ path }: At) =>
      `The disk that holds ${path} is full: there is no room to bring the file up to date for this Undergate. The file was left as it is.`,
    remedy: 'Make room on the disk and open it again, or copy the file to another disk and open it there.',
  },
  failed: {
    message: ({ what, reason }: { what: string; reason: string }) => `Something went wrong with ${what}: ${reason}.`,
    remedy: 'Try again; what was saved before is kept.',
  },
  /** What it went wrong with, where that is no file by its path. */
  what: {
    file: 'the file',
    sheets: 'the map sheets',
    order: 'the order',
    find: 'the sheet',
    pack: 'the handover pack',
  },
  inUse: {
    message: ({ path }: At) => `${path} is open in another Undergate.`,
    remedy: 'Go on in that window, or close it there and open the file here again.',
  },
  full: {
    message: ({ path }: At) => `The disk that holds ${path} is full, so the last change was not saved.`,
    remedy:
      'Make room on the disk and make the change again, or save a copy on another disk. The file holds everything up to that change.',
  },
  readOnly: {
    message: ({ path }: At) => `${path} can't be written: the file or its folder is read-only.`,
    remedy: 'Copy the file to a folder of your own and open it there, or ask for the right to write here.',
  },
  missing: {
    message: ({ path }: At) => `${path} is not there.`,
    remedy:
      'It may have been moved, renamed or deleted, or its drive is not plugged in: look for it and open it there.',
  },
  taken: {
    message: ({ path }: At) => `There is a file at ${path} already. It was not touched.`,
    remedy: 'Give it another name.',
  },
  tooLong: { message: ({ path }: At) => `The name ${path} is too long.`, remedy: 'Give it a shorter one.' },
  nameTooLong: {
    message: ({ name }: { name: string }) => `The name “${name}” is too long.`,
    remedy: 'Give the file a shorter name.',
  },
  nameWithBlank: {
    message: ({ name }: { name: string }) => `The name “${name}” begins or ends with a blank.`,
    remedy: 'Give the file a name without it.',
  },
  folder: {
    message: ({ path }: At) => `${path} is a folder, not a project file.`,
    remedy: 'Select a file inside it.',
  },
  device: {
    message: ({ path }: At) => `${path} is a pipe or a device, not a project file.`,
    remedy: 'Select a file.',
  },
  notAProject: {
    message: ({ path }: At) => `${path} is not an Undergate project file. It was not touched.`,
    remedy: ({ ending }: { ending: string }) =>
      `Select a file that ends in ${ending}; drawings of other kinds come in through Import.`,
  },
  newer: {
    message: ({ path, version, newest }: At & { version: number; newest: number }) =>
      `${path} was written by a newer Undergate (file version ${version}; this one knows up to ${newest}). It was not touched.`,
    remedy: 'Open it with the newer Undergate, or bring this one up to date.',
  },
  outOfDate: {
    message: ({ what }: { what: Phrase }, f: Figures) =>
      `The file has changed since this edit was begun: ${f.say(what)}.`,
    remedy: 'Look at the drawing as it is now and make the edit again.',
    revision: ({ stands, madeOn }: { stands: number; madeOn: number }) =>
      `it stands at revision ${stands}, the edit was made on ${madeOn}`,
    thing: ({ kind, id }: Named) => `${kind} ${id} is no longer what it was`,
  },
  propertyStays: {
    message: 'The record of the property itself can only be changed, not taken away.',
    remedy: 'Make a new file instead.',
  },
  spoiltPhoto: { message: 'A photo was spoilt on its way into the file.', remedy: 'Add it again.' },
  noneOpen: { message: 'No project file is open.', remedy: 'Open one, or make a new one.' },
  closed: { message: 'The property was closed meanwhile.', remedy: 'Open it again.' },
  notWhole: {
    message: ({ path }: At) => `${path} is not a whole path.`,
    remedy: 'Give the path from the top of the disk.',
  },
  noFolder: {
    message: ({ path }: At) => `There is no folder ${path}.`,
    remedy: 'Create it first, or select another folder.',
  },
  noRight: { message: ({ path }: At) => `You have no right to look into ${path}.`, remedy: 'Select another folder.' },
  /** In the system's dialog for choosing a file. */
  filters: { projects: 'Undergate project', maps: 'Offline map files' },
};
