/** Colours of the map; text and signs stand at 4.5:1 or more on the paper, lines at 3:1 or more (WCAG 2.2, AA). */
export interface Palette {
  readonly paper: string;
  readonly ink: string;
  /** Text and lines that step back; still 4.5:1. */
  readonly inkSoft: string;
  readonly grid: string;
  readonly gridHeavy: string;
  /** What is chosen, pointed at or being drawn. */
  readonly accent: string;
  readonly onAccent: string;
  readonly halo: string;
  readonly danger: string;
  readonly caution: string;
  readonly paddockTint: string;
  /** Water, power and other services. */
  readonly service: string;
  /** Eight steps of one hue for the voltage ramp, from the lowest to the highest. */
  readonly ramp: readonly string[];
}

const light: Palette = {
  paper: '#fbf8ef',
  ink: '#1d2530',
  inkSoft: '#4a5361',
  grid: '#e6e0cf',
  gridHeavy: '#cfc7b0',
  accent: '#a63d00',
  onAccent: '#ffffff',
  halo: 'rgba(226, 110, 30, 0.42)',
  danger: '#a3121f',
  caution: '#7a4b00',
  paddockTint: 'rgba(226, 110, 30, 0.13)',
  service: '#3f5a78',
  ramp: ['#e3ecf6', '#c6daee', '#a4c5e4', '#7eacd8', '#5791c8', '#3575b4', '#1d5a99', '#0b3f75'],
};

const dark: Palette = {
  paper: '#161a20',
  ink: '#f3efe4',
  inkSoft: '#c3bfb3',
  grid: '#232931',
  gridHeavy: '#343c47',
  accent: '#ffa868',
  onAccent: '#1b1109',
  halo: 'rgba(255, 168, 104, 0.42)',
  danger: '#ff9d96',
  caution: '#ffd479',
  paddockTint: 'rgba(255, 168, 104, 0.15)',
  service: '#a9c3e0',
  ramp: ['#16324f', '#1b456e', '#225a8e', '#2f71ad', '#4a8bc6', '#6fa7d8', '#9ac4e8', '#c9e1f5'],
};

export const paletteOf = (theme: 'light' | 'dark'): Palette => (theme === 'dark' ? dark : light);
