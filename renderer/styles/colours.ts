import { type Ink, type Palette, paletteOf } from '../../core/drawing/palette.ts';

/** Colours of the window that no drawing has: light, dark. Text stands at 4.5:1 or more on the papers it is used on. */
const ofWindow = {
  'paper-raised': ['#ffffff', '#1f252d'],
  'paper-sunk': ['#f1ecdd', '#0f1216'],
  'rule-strong': ['#6d6754', '#949daa'],
  'accent-paper': ['#fbe6d8', '#43291a'],
  'danger-paper': ['#fde4e3', '#481a1c'],
  'caution-paper': ['#fdf0c8', '#3d3010'],
  good: ['#1f5f3a', '#8fd8ac'],
} as const satisfies Record<string, readonly [light: Ink, dark: Ink]>;

/** Colours that the window shares with the drawings, by their names in the style sheets. */
const ofDrawings = {
  paper: 'paper',
  ink: 'ink',
  'ink-soft': 'inkSoft',
  rule: 'inkFaint',
  accent: 'accent',
  'on-accent': 'onAccent',
  danger: 'danger',
  caution: 'caution',
  band: 'band',
} as const satisfies Record<string, keyof Palette>;

/** The custom properties that the style sheets name colours by, in both themes. */
export function colourRules(): string {
  const properties = (theme: 'light' | 'dark') => {
    const palette = paletteOf(theme);
    const shared = Object.entries(ofDrawings).map(([name, key]) => `--${name}: ${palette[key]};`);
    const own = Object.entries(ofWindow).map(
      ([name, [light, dark]]) => `--${name}: ${theme === 'light' ? light : dark};`,
    );
    return [...shared, ...own, `color-scheme: ${theme};`].join(' ');
  };
  return `:root { ${properties('light')} }\n:root[data-theme="dark"] { ${properties('dark')} }\n`;
}

/** Gives the window its colours. */
export function applyColours(): void {
  const sheet = new CSSStyleSheet();
  sheet.replaceSync(colourRules());
  document.adoptedStyleSheets = [...document.adoptedStyleSheets, sheet];
}
