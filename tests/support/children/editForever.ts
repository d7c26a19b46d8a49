// Edits, undoes and redoes in the project file named by the first argument until it is killed, and acknowledges each
// write on its output, as the window would show it: {"revision":12,"digest":"..."}. Says "import" before a long write.
import { writeSync } from 'node:fs';
import type { Change } from '../../../core/model/difference.ts';
import type { Thing } from '../../../core/model/things.ts';
import { readMigrations } from '../../../electron/store/migrations.ts';
import { openDatabase } from '../../../electron/store/openDatabase.ts';
import { ProjectStore } from '../../../electron/store/projectStore.ts';
import { digest } from '../digest.ts';
import { randomNumbers } from '../random.ts';

const [, , path, seed] = process.argv as [string, string, string, string];
const random = randomNumbers(Number(seed));
const store = new ProjectStore(openDatabase(path, readMigrations()));

for (let n = 0; ; n++) {
  const kind = random();
  if (kind > 0.75) writeSync(1, 'import\n');
  if (kind < 0.15) store.undo();
  else if (kind < 0.25) store.redo();
  else {
    const { revision: baseRevision } = store.state();
    const merging = random() < 0.3 ? { mergeKey: 'drag' } : {};
    store.apply({ baseRevision, label: `Edit ${seed}.${n}`, changes: someChanges(n, kind > 0.75), ...merging });
  }
  const acknowledged = { revision: store.state().revision, digest: digest(store.things()) };
  writeSync(1, `${JSON.stringify(acknowledged)}\n`);
}

/** A few posts made, moved and taken away, or an import so large that writing it takes a while. */
function someChanges(n: number, isImport: boolean): Change[] {
  const posts = store.things().filter((thing) => thing.kind === 'post');
  const [count, noteLength] = isImport ? [200, 4000] : [1 + Math.floor(random() * 4), 300];
  const changes: Change[] = Array.from({ length: count }, (_, index) => {
    const after = postAt(`p${seed}.${n}.${index}`, noteLength);
    return { kind: 'post', id: after.id, before: null, after };
  });
  posts.forEach((post, index) => {
    if (index === posts.length - 1) changes.push(change(post, { ...post, name: `moved ${n}` }));
    else if (random() < 0.1 || posts.length > 200) changes.push(change(post, null));
  });
  return changes;
}

function change(before: Thing, after: Thing | null): Change {
  return { kind: before.kind, id: before.id, before, after };
}

function postAt(id: string, noteLength: number): Thing {
  const at = [random() * 360 - 180, random() * 180 - 90] as const;
  return { kind: 'post', id, name: id, at, role: 'other', note: 'n'.repeat(noteLength) };
}
