/**
 * The colours of every drawing, one row each: in a light window, in a dark one, on paper. Text and signs stand at 4.5:1
 * or more on the paper, lines at 3:1 or more (WCAG 2.2, AA). One ink must do on paper: there, nothing is told apart by
 * colour alone. Shapes and angles are the same in all three; only what is written here differs.
 */

/** `#rrggbb`, or `#rrggbbaa` on screens. */
export type Ink = `#${string}`;

export type Medium = 'light' | 'dark' | 'paper';

type Row = readonly [light: Ink, dark: Ink, paper: Ink];

const rows = {
  paper: ['#fbf8ef', '#161a20', '#ffffff'],
  ink: ['#1d2530', '#f3efe4', '#000000'],
  /** Text and lines that step back; still 4.5:1. */
  inkSoft: ['#4a5361', '#c3bfb3', '#595959'],
  /** Fills and strokes that carry no words. */
  inkFaint: ['#b9b19a', '#565e6a', '#b4b4b4'],
  grid: ['#e6e0cf', '#232931', '#595959'],
  gridHeavy: ['#cfc7b0', '#343c47', '#595959'],
  /** What is chosen, pointed at or being drawn. */
  accent: ['#a63d00', '#ffa868', '#000000'],
  onAccent: ['#ffffff', '#1b1109', '#ffffff'],
  halo: ['#e26e1e6b', '#ffa8686b', '#ececec'],
  danger: ['#a3121f', '#ff9d96', '#000000'],
  caution: ['#7a4b00', '#ffd479', '#000000'],
  paddockTint: ['#e26e1e21', '#ffa86826', '#ececec'],
  /** Ground where something may lie. */
  band: ['#e8dfc6', '#333b47', '#ececec'],
  /** Water, power and other services. */
  service: ['#3f5a78', '#a9c3e0', '#595959'],
  water: ['#3f5a78', '#a9c3e0', '#b4b4b4'],
  /** Strokes across ground that floods. */
  hatch: ['#3f5a7866', '#a9c3e066', '#b4b4b4'],
} as const satisfies Record<string, Row>;

/** Eight steps of one hue for the voltage ramp, from the lowest to the highest. */
const ramps: Readonly<Record<Medium, readonly Ink[]>> = {
  light: ['#e3ecf6', '#c6daee', '#a4c5e4', '#7eacd8', '#5791c8', '#3575b4', '#1d5a99', '#0b3f75'],
  dark: ['#16324f', '#1b456e', '#225a8e', '#2f71ad', '#4a8bc6', '#6fa7d8', '#9ac4e8', '#c9e1f5'],
  paper: ['#f2f2f2', '#d9d9d9', '#bfbfbf', '#a6a6a6', '#8c8c8c', '#737373', '#595959', '#404040'],
};

export type Palette = Readonly<Record<keyof typeof rows, Ink>> & { readonly ramp: readonly Ink[] };

const columns: readonly Medium[] = ['light', 'dark', 'paper'];

function column(medium: Medium): Palette {
  const at = columns.indexOf(medium);
  const inks: Record<string, Ink> = Object.fromEntries(Object.entries(rows).map(([name, row]) => [name, row[at]!]));
  return { ...(inks as Record<keyof typeof rows, Ink>), ramp: ramps[medium] };
}

const palettes: Readonly<Record<Medium, Palette>> = {
  light: column('light'),
  dark: column('dark'),
  paper: column('paper'),
};

export const paletteOf = (medium: Medium): Palette => palettes[medium];

/** M. Okabe and K. Ito, "Color Universal Design", 2008: colours that people with any of the common kinds of colour blindness tell apart. */
export const okabeIto = {
  black: '#000000',
  orange: '#e69f00',
  skyBlue: '#56b4e9',
  green: '#009e73',
  yellow: '#f0e442',
  blue: '#0072b2',
  vermilion: '#d55e00',
  purple: '#cc79a7',
} as const satisfies Record<string, Ink>;

/** Colours of the sections in their order; black is the ink of the line itself. Neighbours in the list differ most. */
export const sectionColours: readonly Ink[] = [
  okabeIto.blue,
  okabeIto.orange,
  okabeIto.green,
  okabeIto.purple,
  okabeIto.skyBlue,
  okabeIto.vermilion,
  okabeIto.yellow,
];

export const sectionColour = (index: number): Ink => sectionColours[index % sectionColours.length]!;
