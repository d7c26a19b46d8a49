import { type Message, message } from '../../words/message.ts';
import { jsonFault } from './jsonFault.ts';

/** A parsed text, or what is wrong with it and where. */
export type Parsed =
  | { readonly ok: true; readonly value: unknown }
  | { readonly ok: false; readonly message: Message; readonly remedy: Message };

/** Larger files are refused before they are parsed: in memory a text takes many times its length. */
const longestText = 64 * 1024 * 1024;

export function parseJson(text: string): Parsed {
  const trimmed = text.startsWith('\ufeff') ? text.slice(1) : text;
  if (trimmed.length > longestText) {
    const [megabytes, most] = [trimmed.length, longestText].map((length) => Math.round(length / 1024 / 1024));
    const tooLong = message('exchange.file.tooLong', { name: null, megabytes: megabytes!, most: most! });
    return wrong(tooLong, message('exchange.remedy.splitOrLeave'));
  }
  const first = /\S/.exec(trimmed)?.[0];
  if (first === undefined) {
    return wrong(message('exchange.file.empty', { name: null }), message('exchange.remedy.selectWithFeature'));
  }
  if (first === '<') return wrong(message('exchange.file.xmlNotGeoJson'), message('exchange.remedy.asGeoJson'));
  if (trimmed.startsWith('PK')) return wrong(message('exchange.file.zipNotGeoJson'), message('exchange.remedy.unpack'));
  try {
    return { ok: true, value: JSON.parse(trimmed) as unknown };
  } catch {
    const at = jsonFault(trimmed) ?? trimmed.length;
    const whole = at >= trimmed.trimEnd().length;
    const { line, column } = lineAndColumn(trimmed, at);
    return whole
      ? wrong(message('exchange.file.jsonBreaksOff', { line, column }), message('exchange.remedy.copyMissing'))
      : wrong(
          message('exchange.file.jsonWrong', { line, column, near: nearTo(trimmed, at) }),
          message('exchange.remedy.fixThere'),
        );
  }
}

function wrong(said: Message, remedy: Message): Parsed {
  return { ok: false, message: said, remedy };
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

function nearTo(text: string, at: number): string {
  return text
    .slice(at, at + 20)
    .replace(/\s+/g, ' ')
    .trim();
}
