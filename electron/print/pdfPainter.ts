import type PDFDocument from 'pdfkit';
import type {
  CirclesItem,
  ClipItem,
  ImageItem,
  Item,
  LinkItem,
  PaperPoint,
  PathItem,
  Stroke,
  TextItem,
} from '../../core/drawing/displayList.ts';
import { mmPerPt } from '../../core/drawing/style.ts';
import { tracePoints } from '../../core/drawing/traces.ts';
import { type FontRun, runWidthEm, typefaces } from './typefaces.ts';

type Doc = InstanceType<typeof PDFDocument>;

/** Points of PDF (1/72 inch) in a millimetre. */
export const ptPerMm = 72 / 25.4;

const pt = (mm: number): number => mm * ptPerMm;

/** Draws one item that is neither tag nor anchor. */
export function paintItem(doc: Doc, item: Item): void {
  switch (item.kind) {
    case 'path':
      paintPath(doc, item);
      break;
    case 'traces':
      paintPath(doc, { kind: 'path', paths: tracePoints(item), closed: false, stroke: item.stroke, fill: null });
      break;
    case 'circles':
      paintCircles(doc, item);
      break;
    case 'text':
      paintText(doc, item);
      break;
    case 'image':
      paintImage(doc, item);
      break;
    case 'clip':
      paintClip(doc, item);
      break;
    case 'tagged':
      for (const inner of item.items) paintItem(doc, inner);
      break;
    case 'link':
      paintLink(doc, item);
      break;
    case 'anchor':
      doc.addNamedDestination(item.name, 'XYZ', pt(item.at[0]), pt(item.at[1]), null);
  }
}

function paintPath(doc: Doc, { paths, closed, stroke, fill }: PathItem): void {
  let drawn = false;
  for (const path of paths) drawn = tracePath(doc, path, closed) || drawn;
  if (!drawn) return;
  if (stroke) setStroke(doc, stroke);
  if (fill && stroke) doc.fillColor(fill).fillAndStroke('even-odd');
  else if (fill) doc.fillColor(fill).fill('even-odd');
  else if (stroke) doc.stroke();
}

/** One by one, so that those that meet leave no hole. */
function paintCircles(doc: Doc, { centres, radius, stroke, fill }: CirclesItem): void {
  if (stroke) setStroke(doc, stroke);
  for (const [x, y] of centres) {
    doc.circle(pt(x), pt(y), pt(radius));
    if (fill && stroke) doc.fillColor(fill).fillAndStroke();
    else if (fill) doc.fillColor(fill).fill();
    else if (stroke) doc.stroke();
  }
}

function tracePath(doc: Doc, path: readonly PaperPoint[], closed: boolean): boolean {
  if (path.length < 2) return false;
  path.forEach(([x, y], i) => {
    if (i === 0) doc.moveTo(pt(x), pt(y));
    else doc.lineTo(pt(x), pt(y));
  });
  if (closed) doc.closePath();
  return true;
}

function setStroke(doc: Doc, { width, ink, dash, cap }: Stroke): void {
  doc
    .lineWidth(pt(width))
    .lineCap(cap ?? 'butt')
    .lineJoin('round')
    .strokeColor(ink);
  if (dash) doc.dash(pt(dash[0]), { space: pt(dash[1]) });
  else doc.undash();
}

function paintText(doc: Doc, item: TextItem): void {
  const { measure, runs } = typefaces();
  const widthPt = pt(measure(item.text, item.font, item.size / mmPerPt));
  const [x, y] = [pt(item.at[0]), pt(item.at[1])];
  const startX = item.align === 'left' ? x : item.align === 'centre' ? x - widthPt / 2 : x - widthPt;
  doc.save();
  if (item.rotationDeg !== 0) doc.rotate(item.rotationDeg, { origin: [x, y] });
  const letters = runs(item.text, item.font);
  if (item.halo > 0) paintHalo(doc, letters, startX, y, item);
  doc.fillColor(item.ink);
  let runX = startX;
  for (const run of letters) {
    doc.font(run.fontName).fontSize(pt(item.size));
    // pdfkit's types name fewer OpenType features than fonts have.
    const features = run.features.length > 0 ? { features: [...run.features] as PDFKit.Mixins.OpenTypeFeatures[] } : {};
    doc.text(run.text, runX, y, { lineBreak: false, baseline: 'alphabetic', ...features });
    runX += runWidthEm(run) * pt(item.size);
  }
  doc.restore();
}

/** A white rim drawn as outlines, not as text, so that nobody who copies or searches the page meets the words twice. */
function paintHalo(doc: Doc, letters: readonly FontRun[], startX: number, y: number, item: TextItem): void {
  let left = startX;
  for (const { font, text, features } of letters) {
    const { glyphs, positions } = font.layout(text, [...features]);
    const scale = pt(item.size) / font.unitsPerEm;
    glyphs.forEach((glyph, i) => {
      const { xAdvance, xOffset, yOffset } = positions[i]!;
      const place = (gx: number, gy: number) => [left + (xOffset + gx) * scale, y - (yOffset + gy) * scale] as const;
      for (const { command, args } of glyph.path.commands) {
        const [a = 0, b = 0, c = 0, d = 0, e = 0, f = 0] = args;
        if (command === 'moveTo') doc.moveTo(...place(a, b));
        else if (command === 'lineTo') doc.lineTo(...place(a, b));
        else if (command === 'quadraticCurveTo') doc.quadraticCurveTo(...place(a, b), ...place(c, d));
        else if (command === 'bezierCurveTo') doc.bezierCurveTo(...place(a, b), ...place(c, d), ...place(e, f));
        else doc.closePath();
      }
      left += xAdvance * scale;
    });
  }
  setStroke(doc, { width: 2 * item.halo, ink: item.haloInk });
  doc.fillColor(item.haloInk).fillAndStroke();
}

function paintImage(doc: Doc, { box: [left, top, right, bottom], bytes }: ImageItem): void {
  const source = Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  doc.image(source, pt(left), pt(top), { width: pt(right - left), height: pt(bottom - top) });
}

function paintClip(doc: Doc, { box: [left, top, right, bottom], items }: ClipItem): void {
  doc.save();
  doc.rect(pt(left), pt(top), pt(right - left), pt(bottom - top)).clip();
  for (const item of items) paintItem(doc, item);
  doc.restore();
}

function paintLink(doc: Doc, { box: [left, top, right, bottom], anchor }: LinkItem): void {
  doc.goTo(pt(left), pt(top), pt(right - left), pt(bottom - top), anchor);
}
