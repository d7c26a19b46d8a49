import type { Figures, Phrase } from '../../types.ts';

const wireSorts = { live: 'live', notLive: 'not live', earth: 'earth', plain: 'plain' };

/** So many wires of a fence, of each sort; no sorts where all are alike. */
type WireCount = { readonly count: number; readonly sort: keyof typeof wireSorts };
type WireLength = { readonly lengthM: number; readonly overGround: boolean };
/** The earth of an energiser; null: it is not known which. */
type EarthOf = { readonly energiser: string | null };

const lengthOf = ({ lengthM, overGround }: WireLength, f: Figures) =>
  overGround ? `${f.length(lengthM)} over the ground` : f.length(lengthM);
const wires = (count: number, f: Figures) => `${f.number(count)} ${f.plural(count, { one: 'wire', other: 'wires' })}`;
const liveWires = (count: number, f: Figures) =>
  `${f.number(count)} live ${f.plural(count, { one: 'wire', other: 'wires' })}`;
const earthWires = (count: number, f: Figures) =>
  `${f.number(count)} earth ${f.plural(count, { one: 'wire', other: 'wires' })}`;
const atPosts = (count: number, f: Figures) =>
  `at ${f.number(count)} ${f.plural(count, { one: 'post', other: 'posts' })}`;
const stakes = (count: number, f: Figures) =>
  `${f.number(count)} ${f.plural(count, { one: 'stake', other: 'stakes' })}`;
const earth = ({ energiser }: EarthOf) => `earth of ${energiser ?? 'an energiser'}`;

/** What a part of a quantity is for. */
export const pieces = {
  /** For a thing as a whole. */
  whole: ({ name }: { name: string }) => name,
  wire: (
    {
      line,
      count,
      sorts,
      tieOffsM,
      ends,
      ...along
    }: { line: string; count: number; sorts: readonly WireCount[]; tieOffsM: number; ends: number } & WireLength,
    f: Figures,
  ) => {
    const of =
      sorts.length > 0 ? ` (${sorts.map((one) => `${f.number(one.count)} ${wireSorts[one.sort]}`).join(', ')})` : '';
    return `${line}: ${f.number(count)} x ${lengthOf(along, f)}${of}, and ${f.tape(tieOffsM)} each for tying off at ${f.number(ends)} ends`;
  },
  tighteners: ({ line, count, strains }: { line: string; count: number; strains: number }, f: Figures) =>
    `${line}: ${wires(count, f)}, ${f.number(strains)} ${f.plural(strains, { one: 'strain', other: 'strains' })}`,
  posts: ({ line, stretches, spacingM }: { line: string; stretches: number; spacingM: number }, f: Figures) =>
    `${line}: ${f.number(stretches)} ${f.plural(stretches, { one: 'stretch', other: 'stretches' })} between fixed posts, at most ${f.tape(spacingM)} from post to post`,
  droppers: ({ line, each, bays }: { line: string; each: number; bays: number }, f: Figures) =>
    `${line}: ${f.number(each)} in each of ${f.number(bays)} ${f.plural(bays, { one: 'bay', other: 'bays' })}`,
  insulators: ({ line, count, posts: held }: { line: string; count: number; posts: number }, f: Figures) =>
    `${line}: ${liveWires(count, f)} ${atPosts(held, f)}`,
  staples: ({ line, count, posts: held }: { line: string; count: number; posts: number }, f: Figures) =>
    `${line}: ${wires(count, f)} ${atPosts(held, f)}`,
  fence: ({ line, ...along }: { line: string } & WireLength, f: Figures) => `${line}: ${lengthOf(along, f)}`,
  stay: ({ line, at }: { line: string; at: Phrase }, f: Figures) => `${line} ends at: ${f.say(at)}`,
  liveWires: ({ line, count, at }: { line: string; count: number; at: Phrase }, f: Figures) =>
    `${line}, ${liveWires(count, f)}, at: ${f.say(at)}`,
  earthWires: ({ line, count, at }: { line: string; count: number; at: Phrase }, f: Figures) =>
    `${line}, ${earthWires(count, f)}, at: ${f.say(at)}`,
  hinged: {
    left: ({ gateway }: { gateway: string }) => `${gateway}: hinged left`,
    right: ({ gateway }: { gateway: string }) => `${gateway}: hinged right`,
  },
  risers: ({ gateway }: { gateway: string }) => `${gateway}: both risers`,
  ends: ({ gateway }: { gateway: string }) => `${gateway}: both ends`,
  endsOfWires: ({ gateway, count }: { gateway: string; count: number }, f: Figures) =>
    `${gateway}: both ends, ${liveWires(count, f)}`,
  endsOfLive: ({ gateway }: { gateway: string }) => `${gateway}: both ends of the live cable`,
  endsOfBoth: ({ gateway }: { gateway: string }) => `${gateway}: both ends of live and earth cable`,
  sign: ({ line, along }: { line: string; along: string }) => `${line}, along ${along}`,
  leadOut: ({ name }: { name: string }) => `lead-out ${name}`,
  leadOutAtFence: ({ name }: { name: string }) => `lead-out ${name}, at the fence`,
  leadOutEnds: ({ name }: { name: string }) => `lead-out ${name}: both ends`,
  earth,
  earthStakes: ({ count, ...of }: { count: number } & EarthOf, f: Figures) => `${earth(of)}: ${stakes(count, f)}`,
  earthClamps: (of: EarthOf) => `${earth(of)}: one for each stake`,
  earthLead: ({ count, ...of }: { count: number } & EarthOf, f: Figures) =>
    `${earth(of)}: to the field and along ${stakes(count, f)}`,
};

/** Where a fixed post stands. */
export const posts = {
  marked: ({ post, lines }: { post: string; lines: readonly string[] }, f: Figures) => `${post} on ${f.list(lines)}`,
  ofGate: ({ gateways }: { gateways: readonly string[] }, f: Figures) => `gate post of ${f.list(gateways)}`,
  meeting: ({ lines }: { lines: readonly string[] }, f: Figures) => `where ${f.list(lines)} meet`,
  corner: ({ line }: { line: string }) => `corner or strainer of ${line}`,
  bend: ({ line }: { line: string }) => `bend of ${line}`,
  end: ({ line }: { line: string }) => `end of ${line}`,
};
