import { createHash } from 'node:crypto';
import { join } from 'node:path';
import type { NewPhotoBytes } from '../../core/api/photoApi.ts';
import { pyramidOf } from '../../core/exchange/image/pyramid.ts';
import { withAnswer } from '../../core/locate/inGround/answer.ts';
import { touchedBy } from '../../core/locate/inGround/touched.ts';
import { difference } from '../../core/model/difference.ts';
import { deleteThings } from '../../core/model/edits/deleteThings.ts';
import type { FaultSearch } from '../../core/model/faultSearchThings.ts';
import { orderDefaults } from '../../core/model/orderDefaults.ts';
import { allThings, projectOf } from '../../core/model/project.ts';
import type { Handover, Photo } from '../../core/model/recordThings.ts';
import type { Reading, Thing } from '../../core/model/things.ts';
import type { Underlay } from '../../core/model/underlayThings.ts';
import { startingPrices } from '../../core/quantities/order/startingPrices.ts';
import { readDemo } from '../../electron/host/demo.ts';
import { registersOf } from '../../electron/host/registers.ts';
import { ImageStaging } from '../../electron/store/imageStaging.ts';
import type { ProjectStore } from '../../electron/store/projectStore.ts';
import { edit, made } from './projectFile.ts';

const demoFile = join(import.meta.dirname, '..', '..', 'assets', 'demo', 'demo-property.json');

const jpegOf = (seed: number) =>
  Uint8Array.from([0xff, 0xd8, 0xff, ...Array.from({ length: 9000 }, (_, i) => (i * seed) % 251)]);

const blobOf = (bytes: Uint8Array): NewPhotoBytes => ({
  blobId: createHash('sha256').update(bytes).digest('hex'),
  bytes,
});

/** The bytes of the photo and of its small copy. */
export const photoBlobs: readonly [NewPhotoBytes, NewPhotoBytes] = [blobOf(jpegOf(7)), blobOf(jpegOf(11))];

export const imageId = 'image-00000000-0000-4000-8000-000000000001';
export const imageSize = { widthPx: 1100, heightPx: 600 };

/** Things of the kinds that the example property has none of. */
function otherThings(demo: readonly Thing[]): Thing[] {
  const switches = demo.filter(({ kind }) => kind === 'switch');
  const gateway = demo.find(({ kind }) => kind === 'gateway')!;
  const reading: Reading = {
    kind: 'reading',
    id: 'reading-with-switches',
    at: [0.001, 0.002],
    date: '2031-05-02',
    voltageV: 6200.5,
    currentA: null,
    openSwitchIds: [switches[2]!.id, 'gone', switches[0]!.id],
    note: 'it’s "after rain",\nby the creek',
  };
  const photo: Photo = {
    kind: 'photo',
    id: 'photo-1',
    of: { kind: 'gateway', id: gateway.id },
    blobId: photoBlobs[0].blobId,
    thumbId: photoBlobs[1].blobId,
    widthPx: 4,
    heightPx: 3,
    takenAt: '2031-05-02T09:30:00',
    gps: [0.0012345678901, -0.1],
    fileName: 'gate.jpg',
    caption: 'Māra’s gate 門',
  };
  const handover: Handover = {
    kind: 'handover',
    id: 'handover-1',
    number: 1,
    date: '2031-05-03',
    by: 'the contractor',
    to: 'the owner',
    note: '',
    things: [photo],
  };
  const search: FaultSearch = {
    kind: 'faultHunt',
    id: 'hunt-1',
    name: 'Search of 2 May 2031',
    startedAt: '2031-05-02T09:00',
    by: 'the stockman',
    energiserId: 'gone',
    saves: 'tests',
    lowBelowV: 3000,
    goodFromV: 4000,
    openedFirst: [],
    readings: [
      {
        check: 'test',
        switchId: 's1',
        switchName: 'S1',
        openIds: ['s1'],
        voltageV: 2100,
        result: 'low',
        doubtful: true,
        at: '2031-05-02T09:10',
        setAside: false,
      },
    ],
    end: {
      at: '2031-05-02T10:00',
      outcome: 'found',
      section: 'B',
      place: 'F1 with G2',
      confirmed: true,
      cause: 'branch',
    },
    note: '',
  };
  return [
    reading,
    photo,
    handover,
    search,
    { ...orderDefaults, currency: 'NZD', taxPercent: 15 },
    startingPrices().items[0]!,
    { kind: 'rollOnHand', id: 'roll', measure: 'pipe:19', lengthM: 38.5, count: 2, note: 'in the shed' },
    { kind: 'stage', id: 'stage-1', name: 'This spring', rank: 0, note: '' },
    { kind: 'stageMark', id: 'in:1', thingId: gateway.id, stageId: 'stage-1' },
  ];
}

export const underlay: Underlay = {
  kind: 'underlay',
  id: 'underlay-1',
  name: 'Aerial photo',
  source: { from: 'picture', imageId, fileName: 'a.jpg', ...imageSize },
  placement: { by: 'eye', at: [0, 0], metresPerPixel: 0.5, upDeg: 0 },
  opacity: 0.75,
  rank: 1,
  shown: true,
  note: '',
};

/** The example property with its first recorded gateway deleted: its crossing is left in the ground. */
function withLeftCrossing(demo: readonly Thing[]): Thing[] {
  const before = projectOf(demo);
  const [record] = [...before.crossingRecord.values()];
  const crossing = before.crossing.get(record!.crossingId)!;
  const after = deleteThings([{ kind: 'crossing', id: crossing.id }])(before);
  const touch = touchedBy(before, after, difference(before, after));
  const left = withAnswer({ before, after, touch, newId: () => 'left-1', date: '2031-05-02' }, 'dead');
  return [...allThings(left)];
}

/** The example property and more: so much that each view for readers has something to show. */
export function fullProperty(): readonly Thing[] {
  const demo = withLeftCrossing(readDemo(demoFile));
  return [...demo, ...otherThings(demo)];
}

/** A picture on its way into the file at `path`, all of its tiles there. */
export function stagedPicture(path: string): ImageStaging {
  const staging = new ImageStaging(path, { id: imageId, fileName: 'a.jpg', ...imageSize });
  for (const { level, columns, rows } of pyramidOf(imageSize.widthPx, imageSize.heightPx).levels) {
    const tiles = Array.from({ length: columns * rows }, (_, i) => ({
      level,
      column: i % columns,
      row: Math.floor(i / columns),
      bytes: jpegOf(3 + level + i),
    }));
    staging.add(tiles);
  }
  return staging;
}

/** Brings into a file of `fullProperty` what comes with bytes: its photos, and a picture under the drawing. */
export function addPictures(store: ProjectStore): void {
  const before = store.things().find(({ kind }) => kind === 'photo')!;
  const named = { ...before, caption: 'As it was left' } as typeof before;
  const change = { kind: before.kind, id: before.id, before, after: named };
  store.applyWithPhotos(edit(store, 'Name the photo', [change]), photoBlobs);
  const staging = stagedPicture(store.path);
  store.applyWithImage(edit(store, 'Lay a map under', [made(underlay)]), staging);
  staging.discard();
}

/** Brings the file to what a file is that the app has closed. */
export function finish(store: ProjectStore): void {
  store.refreshRegisters(registersOf);
  store.close();
}
