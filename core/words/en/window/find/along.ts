import type { Figures } from '../../../types.ts';

/** What goes to the paddock. */
export const along = {
  phone: 'On the phone',
  whatIsIn: ({ inGround, planned }: { inGround: number; planned: number }, f: Figures) =>
    `One file with the map, a card for each crossing (${f.number(inGround)} in the ground, ${f.number(planned)} planned) with its ties, depths and photos, and the switch register. It can be searched, and it needs no network. Send it to the phone and open it there.`,
  make: 'Make the file for the phone',
  making: 'Making the file…',
  fileName: ({ property, date }: { property: string; date: string }) => `${property} for the phone ${date}.html`,
  made: ({ fileName }: { fileName: string }) => `${fileName} is made.`,
  madeWithout: ({ fileName, photos }: { fileName: string; photos: number }, f: Figures) =>
    `${fileName} is made. ${f.number(photos)} ${f.plural(photos, { one: 'photo', other: 'photos' })} found no room in it.`,
  keepNew: 'It shows what is in this file today. Make it again after a change; and keep the old ones off the phone.',
  receiver: 'On a handheld receiver',
  waypoints: (_: null, f: Figures) =>
    `Gateways, switches and posts as waypoints, fences and crossings as tracks. A receiver is some ${f.units === 'imperial' ? 'yards' : 'metres'} off: it leads to the gateway, and the tapes lead to the cable.`,
  notPlaced: 'The property has no place on earth yet.',
  export: ({ format }: { format: string }) => `Export ${format}`,
};
