/** The little of fontkit (which pdfkit brings and builds on) that the sheets use; it has no types of its own. */
declare module 'fontkit' {
  export interface Glyph {
    readonly id: number;
    readonly path: { readonly commands: readonly GlyphCommand[] };
  }

  export interface GlyphCommand {
    readonly command: 'moveTo' | 'lineTo' | 'quadraticCurveTo' | 'bezierCurveTo' | 'closePath';
    /** Font units, y upwards. */
    readonly args: readonly number[];
  }

  export interface GlyphRun {
    readonly glyphs: readonly Glyph[];
    /** Font units. */
    readonly positions: readonly { readonly xAdvance: number; readonly xOffset: number; readonly yOffset: number }[];
    readonly advanceWidth: number;
  }

  export interface Font {
    readonly unitsPerEm: number;
    hasGlyphForCodePoint(codePoint: number): boolean;
    layout(text: string, features?: readonly string[]): GlyphRun;
  }

  export function openSync(path: string): Font;
}
