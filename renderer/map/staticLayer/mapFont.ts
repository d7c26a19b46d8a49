export const labelSizePx = 15;

export const mapFont = (weight: 400 | 700 = 400): string =>
  `${weight} ${labelSizePx}px "Atkinson Hyperlegible", "DejaVu Sans", sans-serif`;
