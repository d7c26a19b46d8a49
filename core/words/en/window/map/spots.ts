import type { Figures, Phrase } from '../../../types.ts';
import { compass } from '../../things.ts';

type Named = { readonly name: string };
type Spot = { readonly spot: Phrase };

/** Places that the pointer is drawn to. */
export const spots = {
  post: ({ name }: Named) => (name === '' ? 'post' : `post ${name}`),
  energiser: ({ name }: Named) => `energiser ${name}`,
  gatePost: ({ name }: Named) => `gate post of ${name}`,
  lineEnd: ({ name }: Named) => `end of ${name}`,
  corner: ({ name }: Named) => `corner of ${name}`,
  onLine: ({ name }: Named) => `on ${name}`,
  ownStart: 'where this line began',
  /** Along a line, for a gate. */
  lineStarts: ({ name }: Named) => `the start of ${name}`,
  lineEnds: ({ name }: Named) => `the end of ${name}`,
  aCorner: ({ name }: Named) => `a corner of ${name}`,
  join: ({ name }: Named) => `the join with ${name}`,
  beside: ({ spot }: Spot, f: Figures) => `beside ${f.say(spot)}`,
  halfway: ({ from, to }: { from: Phrase; to: Phrase }, f: Figures) => `halfway from ${f.say(from)} to ${f.say(to)}`,
  /** Where a switch can stand. */
  suggested: ({ label }: { label: Phrase }, f: Figures) => `the suggested place, ${f.say(label)}`,
  gatePostAt: ({ side, name }: Named & { side: keyof typeof compass }) => `${compass[side]} post of ${name}`,
  supplySide: ({ side, name }: Named & { side: keyof typeof compass }) =>
    `${compass[side]} post of ${name}, supply side`,
  startOf: ({ name }: Named) => `start of ${name}`,
  endOf: ({ name }: Named) => `end of ${name}`,
  leadOutJoins: ({ name }: Named) => `where ${name} joins`,
  /** In the status bar. */
  at: ({ spot }: Spot, f: Figures) => `at ${f.say(spot)}`,
  /** While a gateway is dragged where nothing is near. */
  fromStart: ({ lengthM, name }: Named & { lengthM: number }, f: Figures) =>
    `${f.tape(lengthM)} from the start of ${name}`,
};
