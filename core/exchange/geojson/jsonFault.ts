/**
 * Where a text stops being JSON (RFC 8259): the index of the first character that can't stand there, or the text's
 * length where it breaks off. Null for sound JSON. The engine's own parser does not always say where it stopped.
 */
export function jsonFault(text: string): number | null {
  /** What each open bracket waits for. */
  const open: ('object' | 'array')[] = [];
  let awaiting: 'value' | 'valueOrEnd' | 'name' | 'nameOrEnd' | 'colon' | 'commaOrEnd' | 'end' = 'value';
  const afterValue = () => (open.length === 0 ? 'end' : 'commaOrEnd');
  let at = 0;
  for (;;) {
    at = match(space, text, at);
    const character = text[at];
    if (character === undefined) return awaiting === 'end' ? null : text.length;
    const closes = open.at(-1) === 'object' ? '}' : ']';
    if (awaiting === 'end') return at;
    if (awaiting === 'colon') {
      if (character !== ':') return at;
      awaiting = 'value';
      at++;
    } else if (
      character === closes &&
      (awaiting === 'commaOrEnd' || awaiting === 'valueOrEnd' || awaiting === 'nameOrEnd')
    ) {
      open.pop();
      awaiting = afterValue();
      at++;
    } else if (awaiting === 'commaOrEnd') {
      if (character !== ',') return at;
      awaiting = open.at(-1) === 'object' ? 'name' : 'value';
      at++;
    } else if (awaiting === 'name' || awaiting === 'nameOrEnd') {
      const end = stringEnd(text, at);
      if (end.fault !== null) return end.fault;
      awaiting = 'colon';
      at = end.at;
    } else if (character === '{' || character === '[') {
      open.push(character === '{' ? 'object' : 'array');
      awaiting = character === '{' ? 'nameOrEnd' : 'valueOrEnd';
      at++;
    } else {
      const end = character === '"' ? stringEnd(text, at) : scalarEnd(text, at);
      if (end.fault !== null) return end.fault;
      awaiting = afterValue();
      at = end.at;
    }
  }
}

const space = /[ \t\n\r]*/y;
/** Everything but quotes, backslashes and control characters. */
const plain = /[^"\\\p{Cc}]*/uy;
const escaped = /\\(?:["\\/bfnrt]|u[0-9a-fA-F]{4})/y;
/** An escape that breaks off at the end of the text. */
const escapeBeginning = /^\\(?:u[0-9a-fA-F]{0,3})?$/;
const scalar = /true|false|null|-?(?:0|[1-9]\d*)(?:\.\d+)?(?:[eE][+-]?\d+)?/y;

type End = { readonly at: number; readonly fault: number | null };

/** The index after what a sticky pattern matches at an index; the index itself where it does not match. */
function match(pattern: RegExp, text: string, at: number): number {
  pattern.lastIndex = at;
  return pattern.test(text) ? pattern.lastIndex : at;
}

function stringEnd(text: string, start: number): End {
  if (text[start] !== '"') return { at: start, fault: start };
  let at = start + 1;
  for (;;) {
    at = match(plain, text, at);
    if (text[at] === '"') return { at: at + 1, fault: null };
    if (isUpperControl(text, at)) {
      at++;
      continue;
    }
    const next = match(escaped, text, at);
    if (next === at) return { at, fault: escapeBeginning.test(text.slice(at)) ? text.length : at };
    at = next;
  }
}

/** Control characters above ASCII, which may stand in a string. */
function isUpperControl(text: string, at: number): boolean {
  const code = text.charCodeAt(at);
  return code >= 0x7f && code <= 0x9f;
}

function scalarEnd(text: string, start: number): End {
  const at = match(scalar, text, start);
  if (at > start) return { at, fault: null };
  const rest = text.slice(start);
  const brokenOff = ['true', 'false', 'null'].some((word) => word.startsWith(rest)) || rest === '-';
  return { at, fault: brokenOff ? text.length : start };
}
