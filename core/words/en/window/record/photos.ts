import type { Figures } from '../../../types.ts';

type Of = { readonly what: string };

/** Photos of crossings and other things. */
export const photos = {
  of: ({ what }: Of) => `Photos of ${what}`,
  noneOf: ({ what }: Of) => `No photo of ${what} yet.`,
  ofProperty: 'the property',
  more: ({ left }: { left: number }) => `Show more (${left} left)`,
  noDate: 'Date not known',
  taken: ({ day, time }: { day: string; time: string }, f: Figures) => `${f.date(day)}, ${time}`,
  /** When, and where its camera says that it was. */
  takenAt: ({ taken, place }: { taken: string; place: string }) => `${taken}; ${place} by its camera`,
  caption: 'Caption',
  writeCaption: 'Write a photo’s caption',
  delete: 'Delete a photo',
  deleteIt: 'Delete the photo',
  resizing: 'Resizing…',
  add: 'Add photos',
  addOne: ({ what }: Of) => `Add a photo of ${what}`,
  hint: 'A copy of at most 1600 pixels is kept in the property’s file, with the day and place that the camera wrote.',
  ofThings: 'Photos of things',
  ofThingsCounted: ({ count }: { count: number }) => `Photos of crossings and other things (${count})`,
  noneYet: 'None yet: select a crossing and add them there.',
  tooLarge: ({ fileName }: { fileName: string }) => `${fileName} stays too large. Resize it first.`,
  notReadable: ({ fileName }: { fileName: string }) =>
    `${fileName} is no picture that can be read here. Use a JPEG, PNG or WebP file.`,
};
