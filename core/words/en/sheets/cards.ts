import type { Figures } from '../../types.ts';
import { compass } from '../things.ts';

type Side = keyof typeof compass;

const found = { ties: 'ties', offset: 'tape, along and off', gps: 'GPS' };

const rough = ({ units }: Figures) => (units === 'imperial' ? 'yards' : 'metres');

/** The card of a crossing. */
export const card = {
  crossing: ({ gateway }: { gateway: string }) => `Crossing at ${gateway}`,
  plannedCrossing: ({ gateway }: { gateway: string }) => `Planned crossing at ${gateway}`,
  otherCable: ({ words }: { words: readonly string[] }) => `Another cable is recorded here (${words.join(', ')}).`,
  planned: 'Planned, not in the ground as far as this file knows. Everything here is as drawn, and nothing lies there.',
  joints: ({ count }: { count: number }, f: Figures) =>
    `${f.plural(count, { one: 'A joint lies', other: `${f.number(count)} joints lie` })} underground: look there first for a fault.`,
  lacks: ({ what }: { what: readonly string[] }) => `Not recorded: ${what.join(', ')}.`,
  markedPlanned: 'It is marked planned, yet it was recorded: it counts as in the ground.',
  noPlaceOnEarth: 'The property has no place on earth yet, so there is no code with its coordinates.',
  scanGateway: (_: null, f: Figures) =>
    `Scan for the gateway: where the trench lies is not certain. A phone is off by some ${rough(f)}: dig by the ties.`,
  scanTrench: (_: null, f: Figures) =>
    `Scan for the middle of the trench. A phone is off by some ${rough(f)}: dig by the ties.`,
  noPhoto: 'No photo',
  photo: ({ caption, takenAt, more }: { caption: string; takenAt: string | null; more: number }, f: Figures) =>
    `${caption || 'Photo'}${takenAt === null ? '' : `, ${f.date(takenAt)}`}${more > 0 ? ` (${f.number(more)} more in the file)` : ''}`,
  /** Its points. */
  point: 'Point',
  foundBy: 'Found by',
  alongOpening: 'Along the opening',
  offIt: 'Off it, to the',
  latitude: 'Latitude',
  longitude: 'Longitude',
  east: 'East on the grid',
  north: 'North on the grid',
  within: 'Within',
  mostly: '19 in 20',
  drawnOnly: 'not measured (from the plan)',
  off: ({ offM, side }: { offM: number; side: Side }, f: Figures) => `${f.tape(offM)} ${compass[side]}`,
  found,
  sideNotSaid: ({ by }: { by: keyof typeof found }) => `${found[by]}, side not said`,
  doNotMeet: ({ by }: { by: keyof typeof found | null }) =>
    `${by === null ? '' : `${found[by]}; `}ties that do not meet`,
  along: ({ from, to }: { from: Side; to: Side }) =>
    `Along is from the ${compass[from]} post towards the ${compass[to]} one.`,
  againstPosts: '“Within” is against the posts that the point was taped from.',
  asDrawn: 'How well the property itself lies on earth is not known: coordinates are as drawn.',
  depth: ({ depth }: { depth: string }) => `Depth: ${depth}.`,
  /** Its tapes. */
  taped: 'Taped',
  offBy: 'Tapes off by',
  /** Figures with their units as they are held together. */
  tape: ({ distance, post, error }: { distance: string; post: string; error: string }) =>
    `${distance} from ${post} (±${error})`,
  tapesDoNotMeet: 'do not meet',
  notChecked: 'not checked',
  ofPoint: ({ letter, said }: { letter: string; said: string }) => `${letter}: ${said}`,
  twoPlaces: ({ points }: { points: readonly { readonly letter: string; readonly apartM: number }[] }, f: Figures) =>
    `These tapes fit two places each, and nobody said which: ${points.map(({ letter, apartM }) => `${letter} (its places are ${f.tape(apartM)} apart)`).join(', ')}.`,
  /** What was laid. */
  unknownCable: 'cable of an unknown kind',
  made: ({ state, on, by }: { state: string; on: string; by: string }, f: Figures) =>
    `${state}, ${f.date(on)}${by === '' ? '' : `, by ${by}`}`,
  pipe: 'Pipe',
  pipeOf: ({ boreMm, lengthM }: { boreMm: number; lengthM: number }, f: Figures) =>
    `${f.number(boreMm)} mm bore, about ${f.tape(lengthM)}`,
  liveCable: 'Live cable',
  cable: ({ name, lengthM }: { name: string; lengthM: number }, f: Figures) => `${name}, about ${f.tape(lengthM)}`,
  earthCable: 'Earth cable',
  about: ({ lengthM }: { lengthM: number }, f: Figures) => `about ${f.tape(lengthM)}`,
  sealed: 'Riser ends sealed',
  jointsUnderground: 'Joints underground',
  jointsAt: ({ count, place }: { count: number; place: string }, f: Figures) =>
    `${f.number(count)}: ${place || 'place not noted'}`,
  riserOn: ({ side }: { side: Side }) => `${compass[side].charAt(0).toUpperCase()}${compass[side].slice(1)} riser on`,
  alsoInTrench: 'Also in the trench',
  soil: 'Soil',
  recorded: 'Recorded',
  notes: 'Notes',
  /** The plan. */
  planOf: ({ gateway, scale }: { gateway: string; scale: string }) => `Plan of the crossing at ${gateway} at ${scale}`,
  offAssumed: 'assumed',
  offChord: ({ offM }: { offM: number }, f: Figures) => `off ${f.tape(offM)}`,
  opening: ({ widthM }: { widthM: number }, f: Figures) => `opening ${f.tape(widthM)}`,
  northShaded: 'North is up. Shaded: it may lie here.',
  northPlanned: 'North is up. Planned: not in the ground.',
  hollow: 'Hollow points are not certain.',
  /** The section. */
  riser: ({ heightM }: { heightM: number }, f: Figures) => `riser ${f.tape(heightM)}`,
  trenchPlanned: ({ depthM }: { depthM: number }, f: Figures) => `trench ${f.tape(depthM)} planned`,
  sectionNotMeasured: ({ scale, lengthM }: { scale: string; lengthM: number }, f: Figures) =>
    `${scale}, along and down. Trench ${f.tape(lengthM)} along its path. No depth was measured.`,
  sectionMeasured: ({ scale, lengthM }: { scale: string; lengthM: number }, f: Figures) =>
    `${scale}, along and down. Trench ${f.tape(lengthM)} along its path. Depths are to the top of the pipe.`,
  sectionOf: ({ gateway, scale }: { gateway: string; scale: string }) =>
    `Section through the trench of the crossing at ${gateway} at ${scale}`,
};
