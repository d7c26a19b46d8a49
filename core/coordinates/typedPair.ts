import { readFigure as read, readMeasure } from '../words/numbers/read.ts';

/** One of the two figures of a place, as it was typed. */
export interface TypedFigure {
  /** Metres where a unit was typed, else as it stands. */
  readonly value: number;
  readonly unit: 'm' | 'km' | 'ft' | null;
  readonly decimals: number;
  readonly letter: 'N' | 'S' | 'E' | 'W' | null;
}

export type TypedPair = readonly [TypedFigure, TypedFigure];

/**
 * The two figures of a typed place, parted by a semicolon, a comma, a blank or their letters. Thousands may be parted
 * in each; where the text can be cut in two in more than one way it is `unclear`, and `none` where in no way.
 */
export function readPair(text: string): TypedPair | 'unclear' | 'none' {
  const plain = text.trim().replace(/[\s\u00a0\u2009\u202f]+/g, ' ');
  const ways = [...cutsOf(plain)].flatMap(({ at, past, plainly }) => {
    const [first, second] = [readFigure(plain.slice(0, at)), readFigure(plain.slice(past))];
    return first && second ? [{ pair: [first, second] as const, plainly }] : [];
  });
  const different = ways.filter(({ pair }, i) => ways.findIndex((other) => isSame(other.pair, pair)) === i);
  if (different.length === 1) return different[0]!.pair;
  // "12,5; 100,25", "1,200, 1,000": a comma that is followed by a blank, or a semicolon, parts the two.
  const plainly = different.filter((way) => way.plainly);
  if (plainly.length === 1) return plainly[0]!.pair;
  return ways.length === 0 ? 'none' : 'unclear';
}

interface Cut {
  readonly at: number;
  readonly past: number;
  readonly plainly: boolean;
}

function* cutsOf(text: string): Generator<Cut> {
  for (const found of text.matchAll(/\s*[;,]\s*|\s+|(?<=[NSEW])(?=[-+\d.])|(?<=\d)(?=[NSEW])/gi)) {
    yield { at: found.index, past: found.index + found[0].length, plainly: /;|,\s/.test(found[0]) };
  }
}

function isSame(a: TypedPair, b: TypedPair): boolean {
  return [0, 1].every((i) => a[i]!.value === b[i]!.value && a[i]!.letter === b[i]!.letter);
}

function readFigure(text: string): TypedFigure | null {
  const parts = /^([NSEW](?![a-z]))?\s*([-+−–]?\s*[\d.,](?:.*[\d.])?)\s*(m|km|ft)?\s*([NSEW])?$/i.exec(text.trim());
  if (!parts || (parts[1] && parts[4])) return null;
  const [, before, figure, unit, after] = parts;
  const value = unit ? (readMeasure(`${figure} ${unit}`, 'm')?.value ?? null) : (read(figure!)?.value ?? null);
  if (value === null) return null;
  const fraction = /[.,](\d+)$/.exec(figure!)?.[1] ?? '';
  const isThousands = fraction.length === 3 && value % 1 === 0;
  return {
    value,
    unit: (unit?.toLowerCase() as TypedFigure['unit']) ?? null,
    decimals: isThousands ? 0 : fraction.length,
    letter: ((before ?? after)?.toUpperCase() as TypedFigure['letter']) ?? null,
  };
}
