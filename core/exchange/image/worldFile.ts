import type { AffineMap } from '../../geometry/picture/affineMap.ts';
import { type Message, message } from '../../words/message.ts';

export type WorldFile =
  | { readonly map: AffineMap; readonly problem: null }
  | { readonly map: null; readonly problem: Message };

/**
 * A world file: six numbers, one a line, A D B E C F, which lay the middle of pixel (0, 0) at (C, F). The map that comes
 * back takes pixels from the corner of the first pixel to coordinates of the file's own, unnamed, system.
 */
export function readWorldFile(text: string): WorldFile {
  const lines = text
    .replace(/^\uFEFF/, '')
    .split(/\r?\n/)
    .map((line) => line.trim())
    .filter((line) => line !== '');
  if (lines.length !== 6) return wrong(message('exchange.picture.worldFile.lines', { lines: lines.length }));
  const numbers = lines.map((line) =>
    /^[+-]?(\d+[.,]?\d*|[.,]\d+)(e[+-]?\d+)?$/i.test(line) ? Number(line.replace(',', '.')) : Number.NaN,
  );
  const bad = numbers.findIndex((number) => !Number.isFinite(number) || Math.abs(number) > 1e12);
  if (bad >= 0) {
    const text = lines[bad]!.slice(0, 40);
    return wrong(message('exchange.picture.worldFile.noNumber', { line: bad + 1, text }));
  }
  const [a, d, b, e, c, f] = numbers as [number, number, number, number, number, number];
  if (Math.abs(a * e - b * d) < 1e-300) return wrong(message('exchange.picture.worldFile.noArea'));
  return { map: { a, b, c: c - (a + b) / 2, d, e, f: f - (d + e) / 2 }, problem: null };
}

function wrong(problem: Message): WorldFile {
  return { map: null, problem };
}

/** Whether a file's name is one that world files have: .wld, .jgw, .jpgw, .pgw, .tfw and so on. */
export function isWorldFileName(name: string): boolean {
  return /\.(wld|[a-z]{2}w|[a-z]{3,4}w)$/i.test(name) && !/\.(raw|new|view)$/i.test(name);
}
