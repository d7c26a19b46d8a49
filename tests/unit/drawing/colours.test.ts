import { globSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { paletteOf } from '../../../core/drawing/palette.ts';
import { colourRules } from '../../../renderer/styles/colours.ts';

const folder = join(import.meta.dirname, '..', '..', '..', 'renderer');
const sheets = globSync('**/*.css', { cwd: folder }).map((name) => readFileSync(join(folder, name), 'utf8'));
const scripts = globSync('**/*.tsx', { cwd: folder }).map((name) => readFileSync(join(folder, name), 'utf8'));

describe('the colours of the window', () => {
  const rules = colourRules();
  const [light, dark] = rules.split('\n');

  it('are those of the map, in light and dark', () => {
    expect(light).toContain(`--ink: ${paletteOf('light').ink};`);
    expect(dark).toContain(`--ink: ${paletteOf('dark').ink};`);
    expect(dark).toContain(`--accent: ${paletteOf('dark').accent};`);
  });

  it('are written nowhere else: no style sheet gives a colour of theirs a value', () => {
    const names = [...light!.matchAll(/--([a-z-]+):/g)].map(([, name]) => name!);
    expect(names.length).toBeGreaterThan(12);
    for (const css of sheets) for (const name of names) expect(css).not.toMatch(new RegExp(`^\\s*--${name}:`, 'm'));
  });

  it('have a value for every name that a style sheet uses', () => {
    const given = new Set([rules, ...sheets, ...scripts].flatMap((text) => text.match(/--[a-z-]+(?=['"]?:)/g) ?? []));
    for (const css of sheets) {
      for (const [, name] of css.matchAll(/var\((--[a-z-]+)\)/g)) expect(given, name).toContain(name);
    }
  });
});
