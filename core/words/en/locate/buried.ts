import type { Figures, Phrase } from '../../types.ts';
import { services } from '../things.ts';
import { basis } from './certainty.ts';

type Counted = { readonly basis: keyof typeof basis; readonly count: number };

/** What lies in the ground, and how it is called. */
export const buried = {
  crossing: ({ gateway }: { gateway: string }) => `crossing under ${gateway}`,
  leadOut: ({ name }: { name: string }) => `lead-out ${name}`,
  earthStakes: ({ energiser }: { energiser: string | null }) => `earth stakes of ${energiser ?? 'an energiser'}`,
  service: ({ what, name }: { what: keyof typeof services; name: string }) => `${services[what]} ${name}`.trim(),
  /** Drawn no longer; its own name, and what has become of it. */
  left: ({ name, fate }: { name: string; fate: Phrase }, f: Figures) => `${name} (${f.say(fate)})`,
  lostPoint: ({ post }: { post: Phrase | null }, f: Figures) =>
    `measured point of a crossing that is drawn no longer${post === null ? '' : `, taped from ${f.say(post)}`}`,
  alsoInTrench: ({ what }: { what: string }) => `Also in the trench: ${what}${/[.!?…]$/.test(what) ? '' : '.'}`,
  /** Names that are given to what is kept apart from the drawing. */
  old: {
    crossing: ({ gateway }: { gateway: string }) => `old crossing under ${gateway}`,
    leadOut: ({ name }: { name: string }) => `old lead-out ${name}`,
    earthStakes: ({ energiser }: { energiser: string }) => `old earth stakes of ${energiser}`,
  },
  /** What has become of it, in a word or two. */
  fate: {
    inUse: 'may be live',
    dead: 'dead, left in the ground',
    takenOut: 'taken out',
    /** Stakes are not cut off: they lie there or not. */
    stakes: 'left in the ground',
  },
  /** What that means for somebody who stands there; `since` a day. */
  meaning: {
    inUse: ({ since }: Since, f: Figures) =>
      `${noLongerDrawn(since, f)}, and nobody has said that it is cut off: take it for live.`,
    dead: ({ since }: Since, f: Figures) =>
      `${noLongerDrawn(since, f)}. It was left in the ground, cut off at both ends as recorded; prove it dead all the same.`,
    takenOut: ({ since }: Since, f: Figures) =>
      `${noLongerDrawn(since, f)}. It was taken out of the ground, as recorded.`,
    stakes: ({ since }: Since, f: Figures) =>
      `${noLongerDrawn(since, f)}, and left in the ground as far as this file knows.`,
  },
  /** Of all crossings: how many, how surely, and what else. */
  count: (
    {
      crossings,
      byBasis,
      planned,
      left,
      searching,
    }: {
      /** In the ground. */
      crossings: number;
      byBasis: readonly Counted[];
      planned: number;
      left: number;
      searching: boolean;
    },
    f: Figures,
  ) => {
    const parts = byBasis.map(({ basis: by, count }) => `${f.number(count)} ${basis[by]}`);
    const lying =
      crossings === 0
        ? 'No crossing in the ground'
        : `${f.number(crossings)} ${f.plural(crossings, { one: 'crossing', other: 'crossings' })} in the ground (${parts.join(', ')})`;
    const said = crossings + planned === 0 ? 'No buried crossing is in this file' : lying;
    const also = planned > 0 ? `, ${f.number(planned)} planned` : '';
    const gone =
      left > 0
        ? `; ${f.number(left)} ${f.plural(left, { one: 'thing in the ground that is', other: 'things in the ground that are' })} no longer drawn`
        : '';
    return `${said}${also}${gone}.${searching ? ' A fault is being looked for.' : ''}`;
  },
};

type Since = { readonly since: string | null };

function noLongerDrawn(since: string | null, f: Figures): string {
  return since === null ? 'No longer in the drawing' : `No longer in the drawing since ${f.date(since)}`;
}
