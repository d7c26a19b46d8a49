import type { Figures, Phrase } from '../../types.ts';

/** How sure a place is, in a word or two, for lists and tags. */
export const basis = {
  measured: 'measured',
  partly: 'partly measured',
  ambiguous: 'side not said',
  contradictory: 'tapes do not meet',
  drawn: 'not measured',
  /** Nothing lies there yet. */
  planned: 'planned',
};

/** Of something built or planned. */
export const state = {
  planned: 'planned',
  built: 'built',
  plannedButRecorded: 'planned, but recorded',
};

const assumedWords = { partly: 'partly assumed', wholly: 'assumed' };

/** Several lines are shown, and nobody knows which of them it is. */
type Lines = { readonly withinM: number; readonly lines: number };
/** A point, and the places where it can be. */
type Open = { readonly point: Phrase; readonly places: readonly Phrase[] };

function ofLines({ withinM, lines }: Lines, f: Figures): string {
  return `within ${f.tape(withinM)} of ${lines === 1 ? 'this line' : 'one of these lines'}`;
}

/** How sure the trench as a whole is, and what that rests on. */
export const certainty = {
  assumed: assumedWords,
  within: ({ withinM, assumed }: { withinM: number; assumed: keyof typeof assumedWords | null }, f: Figures) =>
    assumed === null ? f.tape(withinM) : `${f.tape(withinM)} ${assumedWords[assumed]}`,
  planned: 'Planned, not in the ground as far as this file knows. All of it is as drawn.',
  measured: ({ withinM }: { withinM: number }, f: Figures) =>
    `Measured: it lies within ${f.tape(withinM)} of this line, 19 times in 20.`,
  partly: ({ withinM }: { withinM: number }, f: Figures) =>
    `Partly measured: it lies within about ${f.tape(withinM)} of this line; what was not measured is assumed.`,
  ambiguous: ({ open, ...shown }: Lines & { open: readonly Open[] }, f: Figures) => {
    const each = open.map(({ point, places }) => `${f.say(point)}: ${places.map(f.say).join(' or ')}`);
    return `Side not said (${each.join('; ')}), so it can lie in several places. It lies ${ofLines(shown, f)}, 19 times in 20: keep clear of all that is shaded.`;
  },
  contradictory: ({ lost, ...shown }: Lines & { lost: readonly Phrase[] }, f: Figures) =>
    `Tapes do not meet (${lost.map(f.say).join('; ')}), so it is not known where it lies. It is assumed to lie ${ofLines(shown, f)}. Dig by hand and look for the risers first.`,
  drawn: ({ withinM }: { withinM: number }, f: Figures) =>
    `Not measured (from the plan). It is assumed to lie within ${f.tape(withinM)} of this line. Dig by hand and look for the risers first.`,
  gateMoved: ({ movedM }: { movedM: number }, f: Figures) =>
    `The gate’s posts are drawn up to ${f.tape(movedM)} from where they stood when it was dug: it lies where they stood.`,
};
