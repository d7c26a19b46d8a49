import { type SaxesAttributeNS, SaxesParser } from 'saxes';
import { type Message, message } from '../../words/message.ts';

/** An element with what is in it; names are without their prefix. */
export interface XmlElement {
  readonly name: string;
  readonly attributes: Readonly<Record<string, string>>;
  readonly children: XmlElement[];
  /** All text directly in it, trimmed. */
  readonly text: string;
}

export interface XmlReader {
  /** Why the whole file can't be this format, from its outermost element; null: go on. */
  readonly root: (name: string, attributes: Readonly<Record<string, string>>) => XmlRefusal | null;
  /**
   * Called as each element ends, the innermost first. Whether it stays among the children of the one around it: what
   * has been read should not be kept.
   */
  readonly closed: (element: XmlElement, above: readonly XmlElement[]) => 'keep' | 'drop';
  readonly progress?: ((fraction: number) => void) | undefined;
}

export interface XmlRefusal {
  readonly message: Message;
  readonly remedy: Message;
}

const deepest = 100;
const chunkLength = 256 * 1024;

interface Open extends XmlElement {
  readonly pieces: string[];
  text: string;
}

class Stop extends Error {
  readonly refusal: XmlRefusal;

  constructor(refusal: XmlRefusal) {
    super(refusal.message.code);
    this.refusal = refusal;
  }
}

/**
 * Reads XML element by element. A text that is not well formed is refused with the place. Entities that a file
 * declares for itself are refused with it: no map needs them, and nested ones swell without end.
 */
export function readXml(text: string, reader: XmlReader): XmlRefusal | null {
  const parser = new SaxesParser({ xmlns: false, fragment: false, position: true });
  const open: Open[] = [];
  let ended = false;

  parser.on('error', (error) => {
    throw new Stop(notWellFormed(error.message, parser.line, parser.column, ended));
  });
  parser.on('doctype', (doctype) => {
    if (/<!ENTITY/i.test(doctype)) throw new Stop(ownEntities);
  });
  parser.on('opentag', ({ name, attributes }) => {
    const plain = withoutPrefix(name);
    if (open.length === 0) {
      const refusal = reader.root(plain, plainAttributes(attributes));
      if (refusal) throw new Stop(refusal);
    }
    if (open.length >= deepest) throw new Stop(tooDeep);
    open.push({ name: plain, attributes: plainAttributes(attributes), children: [], pieces: [], text: '' });
  });
  const takeText = (piece: string) => {
    open.at(-1)?.pieces.push(piece);
  };
  parser.on('text', takeText);
  parser.on('cdata', takeText);
  parser.on('closetag', () => {
    const element = open.pop()!;
    element.text = element.pieces.join('').trim();
    element.pieces.length = 0;
    if (reader.closed(element, open) === 'keep') open.at(-1)?.children.push(element);
  });

  try {
    for (let at = 0; at < text.length; at += chunkLength) {
      parser.write(text.slice(at, at + chunkLength));
      reader.progress?.(at / text.length);
    }
    ended = true;
    parser.close();
    return null;
  } catch (error) {
    if (error instanceof Stop) return error.refusal;
    throw error;
  }
}

type Attributes = Readonly<Record<string, string | SaxesAttributeNS>>;

function plainAttributes(attributes: Attributes): Record<string, string> {
  const plain: Record<string, string> = Object.create(null) as Record<string, string>;
  for (const [name, value] of Object.entries(attributes)) plain[withoutPrefix(name)] = value as string;
  return plain;
}

function withoutPrefix(name: string): string {
  return name.slice(name.indexOf(':') + 1);
}

const ownEntities: XmlRefusal = {
  message: message('exchange.file.ownEntities'),
  remedy: message('exchange.remedy.plainXml'),
};

const tooDeep: XmlRefusal = {
  message: message('exchange.file.xmlTooDeep', { most: deepest }),
  remedy: message('exchange.remedy.fewerFolders'),
};

function notWellFormed(said: string, line: number, column: number, ended: boolean): XmlRefusal {
  if (ended || /unexpected end/.test(said)) {
    return {
      message: message('exchange.file.xmlBreaksOff', { line }),
      remedy: message('exchange.remedy.copyMissing'),
    };
  }
  const why = said.replace(/^\d+:\d+: /, '').replace(/\.$/, '');
  return {
    message: message('exchange.file.xmlWrong', { line, column, said: why }),
    remedy: message('exchange.remedy.fixThere'),
  };
}

/** The first child of a name. */
export function childOf({ children }: XmlElement, name: string): XmlElement | undefined {
  return children.find((child) => child.name === name);
}

export function childrenOf({ children }: XmlElement, name: string): XmlElement[] {
  return children.filter((child) => child.name === name);
}

/** The text of the first child of a name, or nothing. */
export function textOf(element: XmlElement, name: string): string | undefined {
  return childOf(element, name)?.text;
}
