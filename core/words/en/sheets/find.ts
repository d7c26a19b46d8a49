import { capital } from '../../text.ts';
import type { Figures } from '../../types.ts';
import { compass } from '../things.ts';

type Side = keyof typeof compass;

/** A tape, and the post that it is held to, as it is called. */
type Tape = { readonly post: string; readonly distanceM: number };

const fromPosts = (tapes: readonly Tape[], f: Figures) =>
  tapes.map(({ post, distanceM }) => `from the ${post} ${f.tape(distanceM)}`).join(', ');
const onSide = (side: Side | null) => (side === null ? '' : `, on the ${compass[side]} side`);

/** How a point was measured. */
const how = {
  ties: 'Taped when it was recorded',
  offset: 'Measured off the line of the gate posts',
  gps: 'From a receiver',
};

const offLine = (leftM: number, { leftIs, rightIs }: Sides, f: Figures) =>
  Math.abs(leftM) < 0.005 ? 'on the line' : `${f.tape(Math.abs(leftM))} ${compass[leftM > 0 ? leftIs : rightIs]}`;
type Sides = { readonly leftIs: Side; readonly rightIs: Side };

/** How to find a crossing again. */
export const stake = {
  crossing: ({ gateway }: { gateway: string }) => `To find the crossing at ${gateway}`,
  planned: ({ gateway }: { gateway: string }) => `Planned crossing at ${gateway}`,
  left: ({ name, fate }: { name: string; fate: string }) => `To find the ${name} (${fate})`,
  notBuried: 'This gateway has no buried crossing to find.',
  notBuriedRemedy: 'Select another gateway.',
  point: 'Point',
  measure: 'Measure',
  howSure: 'How sure',
  alongTheLine: ({ from, to }: { from: string; to: string }) => `Along the straight line from the ${from} to the ${to}`,
  fromFirstPost: 'From the first post',
  caution:
    'Energiser off and the fence proven dead before you dig. Locate all other buried services first. Dig by hand near the cable. Level tapes, held to the middle of each post at the ground. Local codes come first.',
  /** A point that may be in several places, in a picture. */
  mark: ({ letter, place }: { letter: string; place: string }) => `${letter} ${place}`,
  placeAt: ({ name, place }: { name: string; place: string }) => `${name}: ${place}`,
  plan: ({ gateway, scale }: { gateway: string; scale: string }) =>
    `Plan of the crossing at ${gateway} at ${scale}, north up`,
  tape: ({ distanceM }: { distanceM: number }, f: Figures) => f.tape(distanceM),
  tapeAssumed: ({ distanceM }: { distanceM: number }, f: Figures) => `${f.tape(distanceM)} assumed`,
  tapePlanned: ({ distanceM }: { distanceM: number }, f: Figures) => `${f.tape(distanceM)} planned`,
  shaded: 'shaded: it may lie here',
  notInTheGround: 'planned: not in the ground',
  /** Where the tapes of a point meet. */
  tapes: {
    now: ({ tapes }: { tapes: readonly Tape[] }, f: Figures) =>
      `From posts as they are drawn now, worked out: ${tapes.map(({ post, distanceM }) => `the ${post} ${f.tape(distanceM)}`).join(', ')}.`,
    offTheLine: ({ offM }: { offM: number }, f: Figures) => `${f.tape(offM)} off the line between the gate posts.`,
    atFoot: ({ post }: { post: string }) => `At the foot of the ${post}.`,
    doNotMeet: ({ tapes }: { tapes: readonly Tape[] }, f: Figures) =>
      `${capital(fromPosts(tapes, f))}: these tapes do not meet.`,
    several: ({ tapes, places }: { tapes: readonly Tape[]; places: readonly string[] }, f: Figures) =>
      `${capital(fromPosts(tapes, f))}, on the ${places.join(' or on the ')}: nobody said which.`,
    here: ({ tapes, side }: { tapes: readonly Tape[]; side: Side | null }, f: Figures) =>
      `${capital(fromPosts(tapes, f))}${onSide(side)}: here.`,
    planned: ({ tapes, side }: { tapes: readonly Tape[]; side: Side | null }, f: Figures) =>
      `Planned: ${fromPosts(tapes, f)}${onSide(side)}.`,
    assumed: ({ tapes, side }: { tapes: readonly Tape[]; side: Side | null }, f: Figures) =>
      `Assumed: ${fromPosts(tapes, f)}${onSide(side)}.`,
  },
  /** How sure a point is, and what that rests on. */
  sure: {
    notKnown: 'Not known where it lies.',
    planned: 'As planned; nothing lies here as far as this file knows.',
    drawn: ({ withinM }: { withinM: number }, f: Figures) =>
      `Not measured (from the plan); may be ${f.tape(withinM)} off.`,
    one: ({ by, withinM }: { by: keyof typeof how; withinM: number }, f: Figures) =>
      `${how[by]}: within ${f.tape(withinM)}, 19 times in 20.`,
    several: (
      { by, withinM, apartM, count }: { by: keyof typeof how; withinM: number; apartM: number; count: number },
      f: Figures,
    ) =>
      `${how[by]}, the side not said: ${count === 2 ? 'two places' : `${f.number(count)} places`}, ${f.tape(apartM)} apart, each within ${f.tape(withinM)}. Keep clear of both, and look at both.`,
    doNotMeet: 'Its tapes do not meet.',
    flat: 'The tapes meet at a flat angle: a small slip moves the place far.',
  },
  /** How far off the straight line the trench lies. */
  step: {
    one: ({ leftM, ...sides }: Sides & { leftM: number }, f: Figures) => offLine(leftM, sides, f),
    either: ({ leastM, mostM, ...sides }: Sides & { leastM: number; mostM: number }, f: Figures) =>
      `${offLine(mostM, sides, f)} or ${offLine(leastM, sides, f)}`,
    between: ({ leastM, mostM, ...sides }: Sides & { leastM: number; mostM: number }, f: Figures) =>
      `between ${offLine(mostM, sides, f)} and ${offLine(leastM, sides, f)}`,
    heading: 'Off the line',
    headingAssumed: 'Off the line, assumed',
  },
};

/** Things that may lie in a dig, as they are called; of many three. */
function named(names: readonly string[], f: Figures): string {
  const most = names.slice(0, 3).join(', ');
  return names.length > 3 ? `${most} and ${f.number(names.length - 3)} more` : most;
}

const shapes = { point: 'A hole', line: 'A trench', area: 'An area' };

/** What is buried near a dig. */
export const dig = {
  title: 'Dig sheet',
  onlyWhatIsKnown:
    'Only what is in this file is known. Anything else may be buried here: have all services located before you dig.',
  noPlace: 'No place to dig was given.',
  noPlaceRemedy: 'Draw it on the map, or type a place.',
  what: (
    {
      shape,
      place,
      errorM,
      withinM,
    }: { shape: keyof typeof shapes; place: string | null; errorM: number; withinM: number },
    f: Figures,
  ) =>
    `${shapes[shape]}${place === null ? '' : ` at ${place}`}, its own place within ${f.length(errorM)}, 19 times in 20. Looked at: everything that may lie within ${f.length(withinM)}.`,
  signatures:
    'Services located by, date: ______________________      Energiser off and fence proven dead by: ______________________',
  plan: ({ scale }: { scale: string }) => `Plan of the dig at ${scale}, north up`,
  number: 'No.',
  thing: 'What',
  howFar: 'How far',
  howSure: 'How sure',
  depth: 'Depth, the shallowest first',
  verdict: 'Verdict',
  overhead: ({ name }: { name: string }) => `${name} (overhead)`,
  keepMachinesClear: 'Keep machines clear: ask its owner by how much',
  inTheDig: 'in the dig',
  drawnAcross: 'drawn across the dig',
  away: ({ distanceM, towards }: { distanceM: number; towards: Side }, f: Figures) =>
    `${f.length(distanceM)} ${compass[towards]}`,
  planned: 'Planned here, not in the ground as far as this file knows',
  mayLie: 'May lie in the dig',
  mayLieLoud: 'MAY LIE IN THE DIG',
  near: 'Near',
  asDrawn: 'Its place is as drawn',
  /** `basis` as it is said. */
  error: (
    { errorM, basis, assumed, ways }: { errorM: number; basis: string; assumed: boolean; ways: number },
    f: Figures,
  ) =>
    `± ${f.length(errorM)} with the dig's own (${basis}${assumed ? ', so assumed' : ''}${ways > 1 ? `; the worst of ${f.number(ways)} places where it can be` : ''})`,
  depthNotKnown: 'depth not known',
  /** The answer in a sentence. */
  nothing: ({ withinM }: { withinM: number }, f: Figures) =>
    `Nothing in this file is buried within ${f.length(withinM)} of the dig.`,
  nearby: ({ count, withinM }: { count: number; withinM: number }, f: Figures) =>
    `${count === 1 ? 'One buried thing' : `${f.number(count)} buried things`} within ${f.length(withinM)}; none that the errors bring into the dig.`,
  doNotDig: ({ names }: { names: readonly string[] }, f: Figures) =>
    `Do not dig yet: ${named(names, f)} may lie in the dig.`,
  /** Said besides, of what is only planned. */
  alsoPlanned: ({ names }: { names: readonly string[] }, f: Figures) =>
    `Planned, not in the ground as far as this file knows: ${named(names, f)}.`,
};
