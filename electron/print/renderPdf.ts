import PDFDocument from 'pdfkit';
import type { Item, Page, TaggedItem } from '../../core/drawing/displayList.ts';
import { paintItem, ptPerMm } from './pdfPainter.ts';
import { typefaces } from './typefaces.ts';

export interface PdfMeta {
  readonly title: string;
  readonly subject: string;
  /** BCP 47. */
  readonly language: string;
  /** When it was made; the same pages and time give the same bytes. */
  readonly madeAt: Date;
  /** A file to go with the pages, as PDF/A-3 allows. */
  readonly attachment?: Attachment;
}

export interface Attachment {
  readonly fileName: string;
  readonly mediaType: string;
  /** What it is, in words. */
  readonly description: string;
  readonly bytes: Uint8Array;
}

type Doc = InstanceType<typeof PDFDocument>;

/**
 * A vector PDF of some pages: fonts embedded, text that can be searched and copied, tagged for reading aloud, with a
 * list of contents. Written for keeping, to the rules of PDF/A-2b (ISO 19005-2), or with an attachment of PDF/A-3b.
 */
export async function renderPdf(pages: readonly Page[], meta: PdfMeta): Promise<Uint8Array> {
  const doc = new PDFDocument({
    autoFirstPage: false,
    // No standard font: those are not embedded.
    font: '',
    pdfVersion: '1.7',
    subset: meta.attachment ? 'PDF/A-3b' : 'PDF/A-2b',
    tagged: true,
    lang: meta.language,
    displayTitle: true,
    info: {
      Title: meta.title,
      Subject: meta.subject,
      Creator: 'Undergate',
      Producer: 'Undergate',
      CreationDate: meta.madeAt,
    },
  });
  const done = collect(doc);
  for (const [name, font] of typefaces().fonts) doc.registerFont(name, font as unknown as PDFKit.Mixins.PDFFontSource);
  for (const page of pages) paintPage(doc, page);
  if (meta.attachment) attach(doc, meta.attachment, meta.madeAt);
  doc.end();
  return done;
}

function attach(doc: Doc, { fileName, mediaType, description, bytes }: Attachment, madeAt: Date): void {
  const source = Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const about = { name: fileName, type: mediaType, description, relationship: 'Data' as const };
  doc.file(source, { ...about, creationDate: madeAt, modifiedDate: madeAt });
}

function collect(doc: Doc): Promise<Uint8Array> {
  return new Promise((resolve, reject) => {
    const chunks: Buffer[] = [];
    doc.on('data', (chunk: Buffer) => chunks.push(chunk));
    doc.on('error', reject);
    doc.on('end', () => resolve(new Uint8Array(Buffer.concat(chunks))));
  });
}

function paintPage(doc: Doc, page: Page): void {
  doc.addPage({ size: [page.widthMm * ptPerMm, page.heightMm * ptPerMm], margin: 0 });
  doc.outline.addItem(page.title);
  paintTopLevel(doc, page.items);
}

/** Tagged items become structure (rows of a table together one table), everything else decoration. */
function paintTopLevel(doc: Doc, items: readonly Item[]): void {
  for (const group of grouped(items)) {
    if (group.kind === 'decoration') {
      paintDecoration(doc, group.items);
    } else if (group.kind === 'rows') {
      const rows = group.items.map((row) => {
        paintDecoration(
          doc,
          row.items.filter((item) => item.kind !== 'tagged'),
        );
        const cells = row.items.filter((item) => item.kind === 'tagged');
        return doc.struct(
          'TR',
          {},
          cells.map((cell) => structure(doc, cell)),
        );
      });
      doc.addStructure(doc.struct('Table', {}, rows));
    } else doc.addStructure(structure(doc, group.item));
  }
}

function structure(doc: Doc, item: TaggedItem): PDFKit.PDFStructureElement {
  const options = item.alternative === undefined ? {} : { alt: item.alternative };
  return doc.struct(item.role, options, () => {
    for (const inner of item.items) paintItem(doc, inner);
  });
}

function paintDecoration(doc: Doc, items: readonly Item[]): void {
  if (items.length === 0) return;
  doc.markContent('Artifact', { type: 'Layout' });
  for (const item of items) paintItem(doc, item);
  doc.endMarkedContent();
}

type Group =
  | { readonly kind: 'decoration'; readonly items: Item[] }
  | { readonly kind: 'rows'; readonly items: TaggedItem[] }
  | { readonly kind: 'tagged'; readonly item: TaggedItem };

/** Neighbours of a kind together, in order. */
function grouped(items: readonly Item[]): Group[] {
  const groups: Group[] = [];
  for (const item of items) {
    const last = groups.at(-1);
    if (item.kind !== 'tagged') {
      if (last?.kind === 'decoration') last.items.push(item);
      else groups.push({ kind: 'decoration', items: [item] });
    } else if (item.role === 'TR') {
      if (last?.kind === 'rows') last.items.push(item);
      else groups.push({ kind: 'rows', items: [item] });
    } else groups.push({ kind: 'tagged', item });
  }
  return groups;
}
