import { globSync, readFileSync, writeFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { sentencesIn } from '../../support/sentences.ts';
import codes from './codes.json' with { type: 'json' };

/** What looks like a text and is none, by file: codes, formats, names, what is told to programmers. */
const allowed: Readonly<Record<string, readonly string[]>> = codes;

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

it('every text that a person reads stands in the catalogue', () => {
  const found = new Map<string, string[]>();
  for (const path of globSync('{core,electron,renderer}/**/*.{ts,tsx}').map((name) => name.replaceAll('\\', '/'))) {
    if (path.startsWith('core/words/')) continue;
    const texts = sentencesIn(readFileSync(path, 'utf8'), path);
    if (texts.length > 0) found.set(path, texts);
  }
  const file = process.env.CODES;
  if (file) writeFileSync(file, `${JSON.stringify(Object.fromEntries([...found].sort()), null, 2)}\n`);
  const strange = [...found].flatMap(([path, texts]) =>
    texts.filter((text) => !allowed[path]?.includes(text)).map((text) => `${path}: ${text}`),
  );
  expect(strange, 'A text belongs into core/words/en (DEVELOPERS.md, "A sentence"); a code into codes.json.').toEqual(
    [],
  );
});
