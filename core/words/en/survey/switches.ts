import type { Figures } from '../../types.ts';

/** Letters of the sections on the two sides of a switch; null where no section lies there. */
type Sides = readonly (string | null)[];

const gatePosts = { start: 'start post', end: 'end post' };
const lineEnds = { start: 'start', end: 'end' };

/** Where switches stand and could stand, how they are fed, what they turn off. */
export const switches = {
  /** Where a switch stands; null: the thing that it stands on is gone. */
  place: {
    gateway: ({ post, gateway, line }: { post: 'start' | 'end'; gateway: string; line: string | null }) =>
      `${gatePosts[post]} of ${gateway} on ${theLine(line)}`,
    gatewayGone: 'a gateway that is gone',
    lineEnd: (
      { end, line, joined }: { end: 'start' | 'end'; line: string | null; joined: readonly (string | null)[] },
      f: Figures,
    ) =>
      joined.length > 0
        ? `${lineEnds[end]} of ${theLine(line)} at ${f.list(joined.map(theLine))}`
        : `${lineEnds[end]} of ${theLine(line)}`,
    line: ({ line, atM }: { line: string | null; atM: number }, f: Figures) =>
      `${theLine(line)}, ${f.length(atM)} from its start`,
    leadOut: ({ name }: { name: string }) => `lead-out ${name}`,
    leadOutGone: 'lead-out that is gone',
  },
  /** A place where a switch could stand. */
  candidate: {
    /** Of a gateway, or of the switch that stands there. */
    named: ({ name }: { name: string }) => name,
    branch: ({ line, at }: { line: string; at: readonly string[] }, f: Figures) => `${line} at ${f.list(at)}`,
    lineEnd: ({ line, end }: { line: string; end: 'start' | 'end' }) => `${lineEnds[end]} of ${line}`,
    post: ({ post, line }: { post: string; line: string }) => `${post} on ${line}`,
    corner: ({ line, atM }: { line: string; atM: number }, f: Figures) =>
      `corner of ${line}, ${f.length(atM)} from its start`,
  },
  /** Which way it is fed, in a cell of a table. */
  fed: {
    oneSide: ({ supply, far }: { supply: string | null; far: string | null }) =>
      `from ${supply ?? 'the energiser'} to ${far ?? 'nothing'}`,
    bothSides: ({ sides }: { sides: Sides }) =>
      `both sides: ${sides.map((letter) => letter ?? 'the energiser').join(' | ')}`,
    nowhere: ({ sides }: { sides: Sides }) => `not fed: ${sides.map((letter) => letter ?? '-').join(' | ')}`,
    notInFence: 'in no live fence',
  },
  /** The same as a sentence. */
  feed: {
    oneSide: ({ supply, far }: { supply: string | null; far: string | null }) =>
      far === null
        ? `Fed from ${sideName(supply)}; beyond it: nothing.`
        : `Fed from ${sideName(supply)}; beyond it: section ${far}.`,
    bothSides: ({ sides, off }: { sides: Sides; off: boolean }, f: Figures) => {
      const fed = `Fed from both sides: ${f.list(sides.map(sideName))}.`;
      return off
        ? `${fed} It is off, and there is current on both sides of it.`
        : `${fed} Turning it off alone makes no wire dead.`;
    },
    nowhere: 'Not fed: no energiser reaches either side of it.',
    notInFence: 'It stands in no live fence, so it cuts nothing off.',
  },
  /** What it cuts off alone. */
  cutsOff: (
    {
      off,
      lengthM,
      sections,
      gateways,
    }: { off: boolean; lengthM: number; sections: readonly string[]; gateways: readonly string[] },
    f: Figures,
  ) => {
    const what = [
      `${f.length(lengthM)} of fence`,
      ...(sections.length > 0
        ? [`${f.plural(sections.length, { one: 'section', other: 'sections' })} ${sections.join(', ')}`]
        : []),
      ...(gateways.length > 0 ? [`with ${gateways.join(', ')}`] : []),
    ].join(', ');
    return off ? `Off, it keeps dead ${what}.` : `Turned off alone it cuts off ${what}.`;
  },
};

function theLine(name: string | null): string {
  return name ?? 'a line that is gone';
}

function sideName(letter: string | null): string {
  return letter === null ? 'the energiser' : `section ${letter}`;
}
