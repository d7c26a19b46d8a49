import { createHash } from 'node:crypto';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { packParts } from '../../core/api/packOptions.ts';
import type { Photo } from '../../core/model/recordThings.ts';
import type { Thing } from '../../core/model/things.ts';
import { printJob } from '../../electron/print/printJob.ts';
import { createProjectFile, openProjectFile } from '../../electron/store/projectFile.ts';
import { summary } from './measure.ts';
import type { BenchRow } from './row.ts';

const demoFile = new URL('../../assets/demo/demo-property.json', import.meta.url);
const photoCount = 500;
/** An ordinary photo of 1600 pixels, and its small copy. */
const [pictureBytes, smallBytes] = [300_000, 50_000];

/** The demo's handover pack with everything in it, and opening a property that holds 500 photos. */
export async function bench(): Promise<BenchRow[]> {
  const demo = JSON.parse(readFileSync(demoFile, 'utf8')) as Thing[];
  return [await packRow(demo), openRow(demo)];
}

async function packRow(demo: readonly Thing[]): Promise<BenchRow> {
  const times: number[] = [];
  for (let i = 0; i < 4; i++) {
    const start = performance.now();
    await printJob(
      {
        what: 'pack',
        options: {
          parts: packParts,
          paper: 'A3',
          orientation: 'landscape',
          scaleDenominator: null,
          handoverNumber: null,
          preparedBy: '',
          preparedFor: '',
          note: '',
          date: '2026-05-12',
        },
      },
      demo,
    );
    times.push(performance.now() - start);
  }
  return { name: "the demo's handover pack", size: demo.length, ...summary(times), unit: 'ms', budget: 10_000 };
}

function openRow(demo: readonly Thing[]): BenchRow {
  const folder = mkdtempSync(join(tmpdir(), 'undergate-bench-'));
  try {
    const path = join(folder, 'Photos.undergate');
    createProjectFile(path, demo, 'bench');
    fillWithPhotos(path, demo);
    const times = Array.from({ length: 12 }, () => {
      const start = performance.now();
      openProjectFile(path).store.close();
      return performance.now() - start;
    });
    return { name: 'open a property with 500 photos', size: photoCount, ...summary(times), unit: 'ms', budget: 1000 };
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

function fillWithPhotos(path: string, demo: readonly Thing[]): void {
  const crossings = demo.filter(({ kind }) => kind === 'crossing');
  const { store } = openProjectFile(path);
  for (let i = 0; i < photoCount; i++) {
    const [picture, small] = [pictureBytes, smallBytes].map((length) => jpegLike(length, i));
    const photo: Photo = {
      kind: 'photo',
      id: `photo-${i}`,
      of: { kind: 'crossing', id: crossings[i % crossings.length]!.id },
      blobId: picture!.blobId,
      thumbId: small!.blobId,
      widthPx: 1600,
      heightPx: 1200,
      takenAt: '2026-05-12T09:30:00',
      gps: [-31.5, -42.25],
      fileName: `photo ${i}.jpg`,
      caption: '',
    };
    const change = { kind: photo.kind, id: photo.id, before: null, after: photo };
    const edit = { baseRevision: store.state().revision, label: 'Add a photo', changes: [change] };
    store.applyWithPhotos(edit, [picture!, small!]);
  }
  store.close();
}

function jpegLike(length: number, seed: number): { blobId: string; bytes: Uint8Array } {
  const bytes = new Uint8Array(length).fill(seed % 251);
  bytes.set([0xff, 0xd8, seed >> 8, seed & 0xff]);
  return { blobId: createHash('sha256').update(bytes).digest('hex'), bytes };
}
