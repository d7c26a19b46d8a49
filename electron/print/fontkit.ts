// @ts-expect-error fontkit, which pdfkit brings and builds on, has no types of its own.
import * as untyped from 'fontkit';

/** The little of fontkit that the sheets use. */
interface Fontkit {
  openSync(path: string): Font;
}

export interface Font {
  readonly unitsPerEm: number;
  hasGlyphForCodePoint(codePoint: number): boolean;
  layout(text: string, features?: readonly string[]): GlyphRun;
}

export interface GlyphRun {
  readonly glyphs: readonly Glyph[];
  /** Font units. */
  readonly positions: readonly { readonly xAdvance: number; readonly xOffset: number; readonly yOffset: number }[];
  readonly advanceWidth: number;
}

interface Glyph {
  readonly path: { readonly commands: readonly GlyphCommand[] };
}

interface GlyphCommand {
  readonly command: 'moveTo' | 'lineTo' | 'quadraticCurveTo' | 'bezierCurveTo' | 'closePath';
  /** Font units, y upwards. */
  readonly args: readonly number[];
}

export const fontkit = untyped as Fontkit;
