import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';
import { expect, test } from 'vitest';
import { openProjectFile } from '../../../electron/store/projectFile.ts';
import { Child } from '../../support/child.ts';
import { digest } from '../../support/digest.ts';
import { makeFile, startingThings, withSqlite } from '../../support/projectFile.ts';
import { randomNumbers } from '../../support/random.ts';
import { temporaryFolder } from '../../support/temporaryFolder.ts';

const rounds = 30;
/** An import takes about so long. */
const longestImportMs = 60;
const slow = { timeout: 300_000 };

interface Acknowledgement {
  readonly revision: number;
  readonly digest: string;
}

test('killed in the middle of writes, over and over: no acknowledged edit is lost', slow, async () => {
  const path = makeFile(join(temporaryFolder(), 'Farm.undergate'));
  const random = randomNumbers(20_310_502);
  for (let round = 1; round <= rounds; round++) {
    const child = new Child('editForever', [path, String(round)]);
    await child.untilLine('import', 1 + Math.floor(random() * 3));
    await wait(random() * longestImportMs);
    await child.kill();

    const acknowledged = JSON.parse(child.lines.findLast((line) => line !== 'import')!) as Acknowledgement;
    const where = `round ${round}, acknowledged ${acknowledged.revision}`;
    const found = withSqlite(path, (database) => ({
      sound: database.pragma('integrity_check', { simple: true }),
      revision: Number(database.prepare(`SELECT value FROM fact WHERE name = 'revision'`).pluck().get()),
      things: database
        .prepare<[], string>('SELECT body FROM thing ORDER BY number')
        .pluck()
        .all()
        .map((body) => JSON.parse(body) as unknown),
    }));
    expect(found.sound, where).toBe('ok');
    // The edit under way when it was killed may have come through, unacknowledged; nothing more.
    expect([acknowledged.revision, acknowledged.revision + 1], where).toContain(found.revision);
    if (found.revision === acknowledged.revision) expect(digest(found.things), where).toBe(acknowledged.digest);

    if (round % 6 === 0) expectHistoryToFit(path, where);
  }
});

/** Going back as far as it goes and forth again must lead through the very same states. */
function expectHistoryToFit(path: string, where: string): void {
  const oldest = withSqlite(path, (database) => database.prepare('SELECT min(seq) FROM step').pluck().get());
  const { store, things } = openProjectFile(path);
  try {
    let steps = 0;
    while (store.undo()) steps += 1;
    if (oldest === 1) expect(store.things(), where).toEqual(startingThings);
    for (let step = 0; step < steps; step++) expect(store.redo(), where).not.toBeNull();
    expect(digest(store.things().sort(byId)), where).toEqual(digest([...things].sort(byId)));
  } finally {
    store.close();
  }
}

const byId = (a: { id: string }, b: { id: string }) => (a.id < b.id ? -1 : 1);

test('killed while making files: each file that is there is whole', slow, async () => {
  const folder = temporaryFolder();
  const random = randomNumbers(7);
  for (let round = 1; round <= 10; round++) {
    const child = new Child('createForever', [folder, String(round)]);
    await child.untilLines(1 + Math.floor(random() * 5));
    await wait(random() * 10);
    await child.kill();
    const names = readdirSync(folder).filter((name) => name.endsWith('.undergate'));
    for (const path of child.lines) expect(names.map((name) => join(folder, name))).toContain(path);
    for (const name of names) openProjectFile(join(folder, name)).store.close();
  }
});
