import type { Figures, Phrase } from '../../types.ts';
import { units } from './units.ts';

interface InBounds {
  readonly min: number;
  readonly max: number;
  /** The least itself will not do. */
  readonly above: boolean;
  readonly whole: boolean;
  readonly unit: keyof typeof units;
}

const places = 'each a longitude from -180 to 180 and a latitude from -90 to 90';

/** What a field must hold, as the end of "It must be ...". */
export const mustBe = {
  yesOrNo: 'yes or no',
  /** The codes that a file may say. */
  oneOf: ({ codes }: { codes: readonly (string | number)[] }) => codes.join(' or '),
  date: 'a date such as 2025-03-14',
  place: 'a longitude from -180 to 180 and a latitude from -90 to 90',
  path: ({ least }: { least: number }) => `${least} or more places, ${places}`,
  placesAtMost: ({ most }: { most: number }) => `at most ${most} places`,
  kindName: 'the name of a kind',
  text: ({ most }: { most: number }) => `text of at most ${most} characters`,
  name: ({ most }: { most: number }) => `a name of 1 to ${most} characters`,
  figure: ({ min, max, above, whole, unit }: InBounds) => {
    const a = whole ? 'a whole number' : 'a number';
    const within = above ? `${a} above ${min} and at most ${max}` : `${a} from ${min} to ${max}`;
    return unit === '' || unit === 'x' || whole ? within : `${within} ${units[unit]}`;
  },
  listAtMost: ({ most }: { most: number }) => `a list of at most ${most}`,
  group: 'a set of figures',
  wholeThing: 'a whole thing',
  orNothing: ({ mustBe }: { mustBe: Phrase }, f: Figures) => `${f.say(mustBe)}, or nothing`,
  /** Of a field within a group. */
  within: ({ mustBe, field }: { mustBe: Phrase; field: Phrase }, f: Figures) => `${f.say(mustBe)} (${f.say(field)})`,
  places: 'a list of places',
  planned: 'what was planned',
  buildable: 'a thing that can be built',
  growth: 'clean, light, heavy, or a leakage from 10 to 1000000000 ohm km',
  ids: 'a list of ids',
  yardstick: 'what it was judged by',
  readings: 'a list of readings',
  ending: 'how it ended',
  heightList: 'a list of heights',
  ways: 'a list of ways with heights',
  heights: 'heights along a way or on a grid',
  listOfBuriedPoints: 'a list of buried points',
  listOfEarthTests: 'a list of earth tests',
  buried: 'what was buried',
  builtMark: 'a mark of what is built',
  gateway: 'a gateway',
  crossing: 'a crossing',
  recordWithOpening: 'a record of a crossing with its opening',
  buriedPoint: 'a buried point',
  leadOut: 'a lead-out',
  earthField: 'an earth field',
  earthTest: 'an earth test',
  kitParts: 'a list of items, each with an amount from 0.01 to 1000',
  currency: 'three letters such as EUR',
  shown: 'what it shows',
  drawing: 'a drawing',
  property: 'the property as it stood',
  drawnThing: 'a drawn thing',
  ofProperty: 'a thing of the property',
  switchPlace: 'a place for a switch',
  results: 'a list of sections, each passed, failed or left out',
  depths: 'depths from 0 to 3 m, each at 0 to 1000 m along the trench',
  post: 'a post',
  ties: 'ties, each a distance from 0 to 1000 m with a tape error from 0.001 to 10 m',
  source: 'a picture or a tile file',
  placedPoints: 'a list of places with their places on earth',
  placement: 'a placement',
  inPicture: 'a place in the picture',
  bounds: 'west, south, east and north in degrees',
};
