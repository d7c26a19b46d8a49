/**
 * Writes the sample file of the present version, and beside each sample what the property in it comes to:
 * `npm exec -- node tests/unit/store/samples/writeSample.ts`. Writes over nothing.
 */
import { copyFileSync, existsSync, mkdtempSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pyramidOf } from '../../../../core/exchange/image/pyramid.ts';
import type { Change } from '../../../../core/model/difference.ts';
import { projectOf } from '../../../../core/model/project.ts';
import type { DrawnThing, Thing } from '../../../../core/model/things.ts';
import { ImageStaging } from '../../../../electron/store/imageStaging.ts';
import { newestVersion, readMigrations } from '../../../../electron/store/migrations.ts';
import { createProjectFile, openProjectFile } from '../../../../electron/store/projectFile.ts';
import type { ProjectStore } from '../../../../electron/store/projectStore.ts';
import { finish, fullProperty, photoBlobs, underlay } from '../../../support/fullProperty.ts';
import { changed, edit, gone, made, post } from '../../../support/projectFile.ts';
import { propertyDigest } from '../../../support/propertyDigest.ts';

const folder = import.meta.dirname;

/** Made with its bytes or in a step of its own, so that the history holds its body. */
const madeLater: ReadonlySet<string> = new Set(['photo', 'handover', 'faultHunt']);

function writeSample(path: string, version: number): void {
  const all = fullProperty();
  const later = all.filter(({ kind }) => madeLater.has(kind));
  createProjectFile(
    path,
    all.filter((thing) => !later.includes(thing)),
    `Undergate of version ${version}`,
  );
  const { store } = openProjectFile(path);
  for (const thing of later) {
    const step = edit(store, `Make ${thing.kind}`, [made(thing)]);
    if (thing.kind === 'photo') store.applyWithPhotos(step, photoBlobs);
    else store.apply(step);
  }
  const project = projectOf(all);
  const gateway = [...project.gateway.values()].at(-1)!;
  const take = (label: string, change: Change) => store.apply(edit(store, label, [change]));
  take('Keep the plan', made(keptPlan(all)));
  layPictureUnder(store);
  take('Delete a reading', gone([...project.reading.values()].at(-1)!));
  take('Name a gateway', changed(gateway, { ...gateway, name: 'G-new' }));
  take('Place a post', made(post('older')));
  take('Name it', changed(post('older'), post('older', 'Corner')));
  take('Place another', made(post('undone')));
  store.undo();
  finish(store);
}

/** One thing of each kind of the drawing. */
function keptPlan(all: readonly Thing[]): Thing {
  const project = projectOf(all);
  const things = (['property', 'fenceType', 'fenceLine', 'gateway', 'crossing', 'switch', 'energiser'] as const)
    .flatMap((kind): readonly DrawnThing[] => [...project[kind].values()])
    .filter((thing, i, list) => list.findIndex(({ kind }) => kind === thing.kind) === i);
  return { kind: 'keptPlan', id: 'plan-1', name: 'As first drawn', date: '2031-04-01', note: '', things };
}

function layPictureUnder(store: ProjectStore): void {
  const image = { id: 'image-00000000-0000-4000-8000-000000000001', fileName: 'a.jpg', widthPx: 300, heightPx: 200 };
  const staging = new ImageStaging(store.path, image);
  for (const { level, columns, rows } of pyramidOf(image.widthPx, image.heightPx).levels) {
    const tile = (i: number) => ({
      level,
      column: i % columns,
      row: Math.floor(i / columns),
      bytes: photoBlobs[1].bytes,
    });
    staging.add(Array.from({ length: columns * rows }, (_, i) => tile(i)));
  }
  const { id: imageId, ...rest } = image;
  const under: Thing = { ...underlay, source: { from: 'picture', imageId, ...rest } };
  store.applyWithImage(edit(store, 'Lay a map under', [made(under)]), staging);
  staging.discard();
}

/** What the property in a sample comes to. Opened in a copy: the sample itself stays as it is. */
function writeDigest(sample: string): void {
  const scratch = mkdtempSync(join(tmpdir(), 'undergate-sample-'));
  const copy = join(scratch, 'sample.undergate');
  copyFileSync(sample, copy);
  const { store, things } = openProjectFile(copy);
  writeFileSync(sample.replace(/undergate$/, 'json'), `${JSON.stringify(propertyDigest(things), null, 1)}\n`);
  store.close();
  rmSync(scratch, { recursive: true });
}

const version = newestVersion(readMigrations());
const present = join(folder, `v${version}.undergate`);
if (!existsSync(present)) writeSample(present, version);
for (const name of readdirSync(folder)) {
  const sample = join(folder, name);
  if (name.endsWith('.undergate') && !existsSync(sample.replace(/undergate$/, 'json'))) writeDigest(sample);
}
