/**
 * Texts of two or more words in a source file that stand in quotes: sentences and parts of them. Imports, comments and what
 * is thrown at programmers (`throw new Error`, `TypeError`, `RangeError`) do not count; text between JSX tags is not seen.
 */
export function sentencesIn(source: string): string[] {
  return [...literalsIn(source)].filter(
    (text) => /[A-Za-z’']{2,} +(?:\S+ +)*[A-Za-z’']{2,}/.test(text) && !isCode(text),
  );
}

/** SQL, CSS selectors and classes: lower-case words with signs that no sentence has. */
function isCode(text: string): boolean {
  return /^(SELECT|INSERT|UPDATE|DELETE|CREATE|PRAGMA|BEGIN|WITH|DROP|ALTER|VACUUM|ATTACH)\b/.test(text.trim());
}

function* literalsIn(source: string): Generator<string> {
  const plain = source
    .replaceAll(/\/\*[\s\S]*?\*\//g, '')
    .replaceAll(/(^|[\s;{}(,])\/\/.*$/gm, '$1')
    .replaceAll(/^(import|export) [^;]*? from '[^']*';$/gm, '')
    .replaceAll(/new (?:Type|Range|Syntax)?Error\((?:'[^'\n]*'|`[^`]*`|\s)*/g, '');
  const quoted = /'((?:[^'\\\n]|\\.)*)'|"((?:[^"\\\n]|\\.)*)"|`((?:[^`\\]|\\.)*)`/g;
  for (const [, single, double, template] of plain.matchAll(quoted)) {
    // What is put in stands for a word; quotes inside of it are looked at by themselves.
    if (template !== undefined) {
      for (const [, inside = ''] of template.matchAll(/\$\{([^}]*)\}/g)) yield* literalsIn(inside);
    }
    yield (single ?? double ?? template ?? '').replaceAll(/\$\{[^}]*\}/g, 'VV');
  }
}
