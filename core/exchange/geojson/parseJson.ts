import { jsonFault } from './jsonFault.ts';

/** A parsed text, or what is wrong with it and where. */
export type Parsed =
  | { readonly ok: true; readonly value: unknown }
  | { readonly ok: false; readonly message: string; readonly remedy: string };

/** Larger files are refused before they are parsed: in memory a text takes many times its length. */
const longestText = 64 * 1024 * 1024;

export function parseJson(text: string): Parsed {
  const trimmed = text.startsWith('\ufeff') ? text.slice(1) : text;
  if (trimmed.length > longestText) {
    const size = Math.round(trimmed.length / 1024 / 1024);
    return wrong(
      `The file is ${size} MB long; files up to ${longestText / 1024 / 1024} MB can be read.`,
      'Split it, or leave out what is not needed.',
    );
  }
  const first = /\S/.exec(trimmed)?.[0];
  if (first === undefined) return wrong('The file is empty.', 'Choose a GeoJSON file with at least one feature.');
  if (first === '<')
    return wrong('This is an XML file (perhaps KML or GPX), not GeoJSON.', 'Save it as GeoJSON first.');
  if (trimmed.startsWith('PK')) return wrong('This is a packed (zip) file, not GeoJSON.', 'Unpack it first.');
  try {
    return { ok: true, value: JSON.parse(trimmed) as unknown };
  } catch {
    const at = jsonFault(trimmed) ?? trimmed.length;
    const whole = at >= trimmed.trimEnd().length;
    const { line, column } = lineAndColumn(trimmed, at);
    return whole
      ? wrong(
          `The file breaks off at line ${line}, column ${column}, before it is complete.`,
          'Copy or save it again; part of it is missing.',
        )
      : wrong(
          `The file is not valid JSON: something is wrong at line ${line}, column ${column}${quoted(trimmed, at)}.`,
          'Fix it there, or save it again from the program that made it.',
        );
  }
}

function wrong(message: string, remedy: string): Parsed {
  return { ok: false, message, remedy };
}

function lineAndColumn(text: string, position: number): { line: number; column: number } {
  let line = 1;
  let lineStart = 0;
  for (let at = text.indexOf('\n'); at !== -1 && at < position; at = text.indexOf('\n', at + 1)) {
    line++;
    lineStart = at + 1;
  }
  return { line, column: position - lineStart + 1 };
}

function quoted(text: string, at: number): string {
  const near = text
    .slice(at, at + 20)
    .replace(/\s+/g, ' ')
    .trim();
  return near === '' ? '' : ` (at "${near}")`;
}
