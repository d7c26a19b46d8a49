import type { MeasureText } from '../../../core/drawing/words.ts';

/** A typewriter: every letter 0.55 of its size wide. For tests in which the typeface does not matter. */
export const plainMeasure: MeasureText = (text, _font, sizePt) => (Array.from(text).length * 0.55 * sizePt * 25.4) / 72;
