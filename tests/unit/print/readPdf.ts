/**
 * A small reader of PDF pages for the tests, written from ISO 32000-1 and sharing nothing with the writer: text by the
 * fonts' ToUnicode maps, filled and stroked paths in page coordinates. It knows what the sheets use and no more:
 * a plain cross-reference table, Flate streams, two-byte fonts.
 */
import { inflateSync } from 'node:zlib';

export interface PdfPath {
  /** Points of PDF from the page's top left corner, y down. */
  readonly points: readonly (readonly [number, number])[];
  readonly filled: boolean;
  readonly stroked: boolean;
  readonly lineWidth: number;
  readonly fill: string;
}

export interface PdfPage {
  readonly width: number;
  readonly height: number;
  readonly texts: readonly string[];
  readonly paths: readonly PdfPath[];
}

export interface ReadPdf {
  readonly raw: string;
  readonly pages: readonly PdfPage[];
}

type Matrix = readonly [number, number, number, number, number, number];

export function readPdf(bytes: Uint8Array): ReadPdf {
  const raw = Buffer.from(bytes).toString('latin1');
  const objects = new Map<string, string>();
  for (const match of raw.matchAll(/(?:^|\n)(\d+) 0 obj\n([\s\S]*?)\nendobj/g)) objects.set(match[1]!, match[2]!);
  const pages = [...objects.values()].filter((body) => /\/Type \/Page\b(?!s)/.test(body));
  return { raw, pages: pages.map((page) => readPage(page, objects)) };
}

function readPage(page: string, objects: ReadonlyMap<string, string>): PdfPage {
  const [, , width, height] = /\/MediaBox \[([^\]]*)\]/.exec(page)![1]!.trim().split(/\s+/).map(Number);
  const content = streamOf(objects.get(/\/Contents (\d+) 0 R/.exec(page)![1]!)!);
  const resources = objects.get(/\/Resources (\d+) 0 R/.exec(page)?.[1] ?? '') ?? page;
  const fonts = new Map<string, Map<string, string>>();
  const fontList = /\/Font <<([\s\S]*?)>>/.exec(resources)?.[1] ?? '';
  for (const [, name, id] of fontList.matchAll(/\/(\w+) (\d+) 0 R/g))
    fonts.set(name!, unicodeMap(objects.get(id!)!, objects));
  return { width: width!, height: height!, ...interpret(content, height!, fonts) };
}

function streamOf(body: string): string {
  const start = body.indexOf('stream\n') + 'stream\n'.length;
  const data = Buffer.from(body.slice(start, body.lastIndexOf('\nendstream')), 'latin1');
  return (body.includes('/FlateDecode') ? inflateSync(data) : data).toString('latin1');
}

function unicodeMap(font: string, objects: ReadonlyMap<string, string>): Map<string, string> {
  const map = new Map<string, string>();
  const cmap = streamOf(objects.get(/\/ToUnicode (\d+) 0 R/.exec(font)![1]!)!);
  for (const [, from, , list] of cmap.matchAll(/<([0-9a-f]+)> <([0-9a-f]+)> \[([^\]]*)\]/gi)) {
    [...list!.matchAll(/<([0-9a-f ]*)>/gi)].forEach(([, hex], i) => {
      const code = (Number.parseInt(from!, 16) + i).toString(16).padStart(4, '0');
      map.set(code, Buffer.from(hex!.replaceAll(' ', ''), 'hex').swap16().toString('utf16le'));
    });
  }
  return map;
}

function interpret(content: string, height: number, fonts: ReadonlyMap<string, Map<string, string>>) {
  const texts: string[] = [];
  const paths: PdfPath[] = [];
  let matrix: Matrix = [1, 0, 0, 1, 0, 0];
  let state = { matrix, lineWidth: 1, fill: '0 0 0' };
  const stack: (typeof state)[] = [];
  let points: [number, number][] = [];
  let font = new Map<string, string>();
  let line = '';
  let operands: string[] = [];
  const at = (x: number, y: number): [number, number] => {
    const [a, b, c, d, e, f] = state.matrix;
    return [a * x + c * y + e, height - (b * x + d * y + f)];
  };
  const finish = (filled: boolean, stroked: boolean) => {
    const { lineWidth, fill } = state;
    if (filled || stroked) paths.push({ points, filled, stroked, lineWidth, fill });
    points = [];
  };
  for (const [token] of content.matchAll(/\[[^\]]*\]|<<[^>]*>>|<[^>]*>|\([^)]*\)|[^\s[\]<>()]+/g)) {
    if (!/^[A-Za-z*']+$/.test(token)) {
      operands.push(token);
      continue;
    }
    const n = operands.map(Number);
    if (token === 'q') stack.push({ ...state });
    else if (token === 'Q') state = stack.pop()!;
    else if (token === 'cm') {
      matrix = times(n as unknown as Matrix, state.matrix);
      state = { ...state, matrix };
    } else if (token === 'w') state = { ...state, lineWidth: n[0]! };
    else if (token === 'scn') state = { ...state, fill: operands.join(' ') };
    else if (token === 'm' || token === 'l') points.push(at(n[0]!, n[1]!));
    else if (token === 'c') points.push(at(n[4]!, n[5]!));
    else if (token === 're') {
      const [x, y, w, h] = n as [number, number, number, number];
      points.push(at(x, y), at(x + w, y), at(x + w, y + h), at(x, y + h));
    } else if (/^(f|f\*|F)$/.test(token)) finish(true, false);
    else if (token === 'S') finish(false, true);
    else if (/^B\*?$/.test(token)) finish(true, true);
    else if (token === 'n') finish(false, false);
    else if (token === 'BT') line = '';
    else if (token === 'Tf') font = fonts.get(operands[0]!.slice(1))!;
    else if (token === 'TJ') {
      for (const [, hex] of operands[0]!.matchAll(/<([0-9a-f]+)>/gi)) {
        line += hex!
          .match(/.{4}/g)!
          .map((code) => font.get(code) ?? '?')
          .join('');
      }
    } else if (token === 'ET') texts.push(line);
    operands = [];
  }
  return { texts, paths };
}

function times(a: Matrix, b: Matrix): Matrix {
  return [
    a[0] * b[0] + a[1] * b[2],
    a[0] * b[1] + a[1] * b[3],
    a[2] * b[0] + a[3] * b[2],
    a[2] * b[1] + a[3] * b[3],
    a[4] * b[0] + a[5] * b[2] + b[4],
    a[4] * b[1] + a[5] * b[3] + b[5],
  ];
}
