import { describe, expect, it } from 'vitest';
import { type Palette, paletteOf } from '../../../core/drawing/palette.ts';

/** Relative luminance of `#rrggbb`, WCAG 2.2. */
function luminance(colour: string): number {
  const channels = [1, 3, 5].map((i) => Number.parseInt(colour.slice(i, i + 2), 16) / 255);
  const [r, g, b] = channels.map((c) => (c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4));
  return 0.2126 * r! + 0.7152 * g! + 0.0722 * b!;
}

function contrast(a: string, b: string): number {
  const [dark, light] = [luminance(a), luminance(b)].sort((p, q) => p - q);
  return (light! + 0.05) / (dark! + 0.05);
}

describe.each(['light', 'dark', 'paper'] as const)('the %s palette', (theme) => {
  const palette: Palette = paletteOf(theme);

  it.each(['ink', 'inkSoft', 'accent', 'danger', 'caution', 'service'] as const)(
    '%s stands at 4.5:1 on the paper',
    (name) => {
      expect(contrast(palette[name], palette.paper)).toBeGreaterThanOrEqual(4.5);
    },
  );

  it('writes on its accent at 4.5:1', () => {
    expect(contrast(palette.onAccent, palette.accent)).toBeGreaterThanOrEqual(4.5);
  });

  it('has a ramp whose steps run one way, away from the paper', () => {
    const steps = palette.ramp.map((step) => contrast(step, palette.paper));
    expect(steps).toEqual(steps.toSorted((a, b) => a - b));
    expect(steps.at(-1)).toBeGreaterThanOrEqual(4.5);
  });
});
