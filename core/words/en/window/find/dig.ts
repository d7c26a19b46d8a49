import { capital } from '../../../text.ts';
import type { Figures, Phrase } from '../../../types.ts';

/** "I will dig here": what is buried near. */
export const dig = {
  hole: 'Hole (H)',
  trench: 'Trench (T)',
  area: 'Area (A)',
  offAndDead: 'Energiser off and the fence proven dead before work near it.',
  draw: 'Draw on the map where you will dig, or type the place.',
  coordinates: 'Coordinates of the dig',
  lookHere: 'Look here',
  lookWithin: 'Look within',
  placeWithin: 'Place within, 19 times in 20',
  howGood: ({ byEye, byPhone }: { byEye: string; byPhone: string }) =>
    `By eye on the map: about ${byEye} and more. By a phone: about ${byPhone} under open sky (common practice, no source).`,
  print: 'Print the dig sheet',
  clear: 'Clear',
  show: 'Show',
  thing: ({ number, thing }: { number: string; thing: Phrase }, f: Figures) => `${number}. ${f.say(thing)}`,
  overhead: 'Overhead: keep machines clear of it; ask its owner by how much.',
  /** Each a sentence without its stop. */
  said: ({ all }: { all: readonly string[] }) => all.map((each) => `${capital(each)}.`).join(' '),
};
