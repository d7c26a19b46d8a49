import { globSync, readFileSync, writeFileSync } from 'node:fs';
import { dirname } from 'node:path';
import { expect, it } from 'vitest';
import { sentencesIn } from '../../support/sentences.ts';
import left from './sentencesLeft.json' with { type: 'json' };

const allowed: Readonly<Record<string, number>> = left;

/** Room, and the folder in it: core/checks, core/model/edits, renderer/panels. */
function folderOf(path: string): string {
  const parts = dirname(path).split('/');
  return parts.slice(0, parts[1] === 'model' ? 3 : 2).join('/');
}

it('tells a sentence from a code', () => {
  const source = `import { x } from './some where.ts';
    // A comment with 'words in it'.
    throw new Error('Only a programmer sees this.');
    const a = 'gatewaysOverlap';
    const b = 'Move it along.';
    const c = \`\${n} of \${n > 1 ? 'many small' : 'few'} things\`;
    const d = <Field label="Length" kind="length" className="wide field">Undo</Field>;
    const e = { label: n > 1 ? 'Posts' : 'Post', kind: 'post' };
  `;
  const found = ['Move it along.', 'VV of VV things', 'many small', 'Length', 'Undo', 'Posts', 'Post'];
  expect(sentencesIn(source)).toEqual(found);
});

it('no folder outside the catalogue holds more sentences than it did: those that are left only become fewer', () => {
  const counts = new Map<string, number>();
  for (const path of globSync('{core,electron,renderer}/**/*.{ts,tsx}').map((name) => name.replaceAll('\\', '/'))) {
    if (path.startsWith('core/words/')) continue;
    const count = sentencesIn(readFileSync(path, 'utf8'), path).length;
    if (count > 0) counts.set(folderOf(path), (counts.get(folderOf(path)) ?? 0) + count);
  }
  const file = process.env.SENTENCES_LEFT;
  if (file) writeFileSync(file, `${JSON.stringify(Object.fromEntries([...counts].sort()), null, 2)}\n`);
  const grown = [...counts].filter(([folder, count]) => count > (allowed[folder] ?? 0));
  const said = grown.map(([folder, count]) => `${folder}: ${count}, where ${allowed[folder] ?? 0} were left`);
  expect(said, 'New sentences belong into core/words/en (DEVELOPERS.md, "A sentence").').toEqual([]);
});
