/** Functions that SQLite 3.31 has built in: https://www.sqlite.org/lang_corefunc.html, lang_aggfunc, lang_datefunc, json1. */
const functionsOf331 = new Set(
  `abs changes char coalesce glob hex ifnull instr last_insert_rowid length like likelihood likely lower ltrim max min
  nullif printf quote random randomblob replace round rtrim sqlite_version substr total_changes trim typeof unicode
  unlikely upper zeroblob avg count group_concat sum total date time datetime julianday strftime json json_array
  json_array_length json_each json_extract json_group_array json_group_object json_insert json_object json_patch
  json_quote json_remove json_replace json_set json_tree json_type json_valid row_number rank dense_rank percent_rank
  cume_dist ntile lag lead first_value last_value nth_value raise`.split(/\s+/),
);

/** Words that may stand before a bracket without being a function. */
const notFunctions = new Set(
  `all and as by case check cast else exists filter from group having in index into is join key not on or order over
  references select set table then union unique using values view when where`.split(/\s+/),
);

const newerWords: readonly (readonly [RegExp, string])[] = [
  [/->/, '-> and ->> (3.38)'],
  [/\bstrict\b/, 'STRICT (3.37)'],
  [/\breturning\b/, 'RETURNING (3.35)'],
  [/\bmaterialized\b/, 'MATERIALIZED (3.35)'],
  [/\bis (not )?distinct from\b/, 'IS DISTINCT FROM (3.39)'],
  [/\b(right|full)( outer)? join\b/, 'RIGHT and FULL JOIN (3.39)'],
  [/\bwithin group\b/, 'WITHIN GROUP (3.47)'],
  [/\bfilter \(/, 'FILTER of an aggregate'],
  [/\bgenerated\b|\bvirtual\b|\bstored\b/, 'a computed column or virtual table'],
  [/\d_\d/, 'digits parted by _ (3.46)'],
];

/**
 * What in an SQL text no SQLite of 2020 (3.31) can read, or what a file of ours has no need for: an empty list where it is
 * plain. Knows words, not meanings; the test that has the file read by an older SQLite knows those.
 */
export function newerThan331(sql: string): string[] {
  const text = plain(sql);
  const found = newerWords.filter(([pattern]) => pattern.test(text)).map(([, name]) => name);
  for (const { name, inside } of calls(text)) {
    if (!functionsOf331.has(name)) found.push(`the function ${name}`);
    else if (/\border by\b/.test(outermost(inside))) found.push(`ORDER BY inside of ${name} (3.44)`);
  }
  return found;
}

/** Lower case, without remarks, names in quotes and the contents of texts, with one blank for each gap. */
function plain(sql: string): string {
  return sql
    .replace(/--[^\n]*|\/\*.*?\*\//gs, ' ')
    .replace(/'(?:[^']|'')*'/g, `''`)
    .replace(/"(?:[^"]|"")*"/g, 'name')
    .toLowerCase()
    .replace(/\s+/g, ' ');
}

/** Each function call with what stands between its brackets. The name of a new table before its columns is none. */
function calls(text: string): { name: string; inside: string }[] {
  return [...text.matchAll(/(create table |references )?\b([a-z_]\w*) ?\(/g)]
    .filter(([, before, name]) => before === undefined && !notFunctions.has(name!))
    .map((match) => ({ name: match[2]!, inside: bracketed(text, match.index + match[0].length) }));
}

/** From a place inside of a bracket up to its end. */
function bracketed(text: string, from: number): string {
  let depth = 1;
  let at = from;
  for (; at < text.length && depth > 0; at++) depth += text[at] === '(' ? 1 : text[at] === ')' ? -1 : 0;
  return text.slice(from, at - 1);
}

/** The text without what stands in brackets of its own. */
function outermost(text: string): string {
  const inner = /\([^()]*\)/g;
  let rest = text;
  while (inner.test(rest)) rest = rest.replace(inner, '');
  return rest;
}
