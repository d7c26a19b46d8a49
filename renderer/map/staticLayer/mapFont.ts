import { canvasFont } from '../canvas/paintItems.ts';

export const labelSizePx = 15;

export const mapFont = (weight: 400 | 700 = 400): string =>
  canvasFont(weight === 700 ? 'bold' : 'regular', labelSizePx);
