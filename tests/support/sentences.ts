import { parseSync } from 'vite';

interface Node {
  readonly type: string;
  readonly [key: string]: unknown;
}

/** Attributes and fields whose text people read, be it a single word. */
const read =
  /^(label|title|ariaLabel|aria-label|aria-description|placeholder|alt|hint|heading|caption|summary|message|remedy|text|what)$/;

/** Attributes whose text nobody reads. */
const unread = /^(className|class|id|key|type|role|href|d|style|viewBox|name|htmlFor|transform|points|data-.*)$/;

/**
 * Texts in a source file that people may read: what is written between JSX tags or stands in an attribute or field such as
 * `label`; elsewhere texts of two or more words. Types, imports and what is thrown at programmers (`throw new Error`,
 * `TypeError`, `RangeError`) do not count. What is put into a template stands as "VV".
 */
export function sentencesIn(source: string, fileName = 'source.tsx'): string[] {
  const { program, errors } = parseSync(fileName, source);
  if (errors.length > 0) throw new Error(`${fileName} can't be read: ${errors[0]?.message}`);
  return [...textsUnder(program as unknown as Node, false)];
}

function* textsUnder(node: Node, isRead: boolean): Generator<string> {
  if (/^TS(?!As|Satisfies|NonNull)|^Import|^Export(All)/.test(node.type)) return;
  switch (node.type) {
    case 'JSXText':
      if (/[A-Za-z]{2}/.test(String(node.value))) yield String(node.value).trim().replaceAll(/\s+/g, ' ');
      return;
    case 'JSXAttribute': {
      const name = String((node.name as Node).name);
      if (!unread.test(name) && node.value) yield* textsUnder(node.value as Node, read.test(name));
      return;
    }
    case 'Property': {
      const key = node.key as Node;
      const name = String(key.name ?? key.value);
      yield* textsUnder(node.value as Node, read.test(name));
      return;
    }
    case 'NewExpression':
      if (/^(Type|Range|Syntax)?Error$/.test(String((node.callee as Node).name))) return;
      break;
    case 'CallExpression':
    case 'BinaryExpression':
    case 'MemberExpression':
    case 'BlockStatement':
      // A word inside is an argument or a key, not what is read.
      yield* inside(node, false);
      return;
    case 'ConditionalExpression':
      yield* textsUnder(node.test as Node, false);
      yield* textsUnder(node.consequent as Node, isRead);
      yield* textsUnder(node.alternate as Node, isRead);
      return;
    case 'Literal':
      if (typeof node.value === 'string' && isText(node.value, isRead)) yield node.value;
      return;
    case 'TemplateLiteral': {
      const quasis = node.quasis as readonly { readonly value: { readonly cooked: string } }[];
      const text = quasis.map(({ value }) => value.cooked).join('VV');
      if (isText(text, isRead)) yield text;
      for (const part of node.expressions as readonly Node[]) yield* textsUnder(part, isRead);
      return;
    }
  }
  yield* inside(node, isRead);
}

function* inside(node: Node, isRead: boolean): Generator<string> {
  for (const [name, part] of Object.entries(node)) {
    if (name === 'directive') continue;
    if (Array.isArray(part)) for (const one of part) if (isNode(one)) yield* textsUnder(one, isRead);
    if (isNode(part)) yield* textsUnder(part, isRead);
  }
}

function isNode(value: unknown): value is Node {
  return typeof value === 'object' && value !== null && typeof (value as Node).type === 'string';
}

function isText(text: string, isRead: boolean): boolean {
  const own = text.replaceAll('VV', '');
  if (isRead) return /[A-Za-z]{2}/.test(own);
  return /[A-Za-z’']{2,}/.test(own) && /[A-Za-z’']{2,} +(?:\S+ +)*[A-Za-z’']{2,}/.test(text) && !isCode(text);
}

/** SQL. */
function isCode(text: string): boolean {
  return /^(SELECT|INSERT|UPDATE|DELETE|CREATE|PRAGMA|BEGIN|WITH|DROP|ALTER|VACUUM|ATTACH)\b/.test(text.trim());
}
