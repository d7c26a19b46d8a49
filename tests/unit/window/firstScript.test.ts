import { readFileSync } from 'node:fs';
import { join, relative } from 'node:path';
import { expect, test } from 'vitest';

/** What a script needs before it runs: its own imports and theirs, but for types and what is imported later on. */
function neededBy(file: string, found = new Set<string>()): Set<string> {
  if (found.has(file)) return found;
  found.add(file);
  const imports = readFileSync(file, 'utf8').matchAll(/^(?:import|export) (?!type )(?:[^;'"]*? from )?'(\.[^']+)';/gms);
  for (const [, path] of imports) neededBy(join(file, '..', path!), found);
  return found;
}

test('the page’s first script asks the host with neither the texts nor the window’s code, and waits for neither', () => {
  const needed = [...neededBy('renderer/main.ts')].map((file) => relative('.', file));
  expect(needed).toContain('renderer/client/enter.ts');
  expect(needed.filter((file) => /^core\/words\/|^renderer\/(?!client\/|main)/.test(file))).toEqual([]);
  expect(readFileSync('renderer/main.ts', 'utf8')).not.toMatch(/^(?:const .* = )?await /m);
});
