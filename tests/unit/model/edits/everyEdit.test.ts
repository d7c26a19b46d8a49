import { existsSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { thingSchema } from '../../../../core/api/thingSchemas.ts';
import { applyChanges, difference, inverse } from '../../../../core/model/difference.ts';
import { deleteThings, withDependants } from '../../../../core/model/edits/deleteThings.ts';
import { setRule } from '../../../../core/model/edits/setRule.ts';
import { pathIn } from '../../../../core/model/edits/support/path.ts';
import { parsePlaceKey, thingsOfPlaceKey } from '../../../../core/model/placeKey.ts';
import { allThings, kinds, type Project } from '../../../../core/model/project.ts';
import { switchCandidates } from '../../../../core/survey/candidates.ts';
import { surveyOf } from '../../../../core/survey/survey.ts';
import type { SwitchCandidate } from '../../../../core/survey/types.ts';
import { inEnglish } from '../../../support/english.ts';
import { attempts, dice, refusalOf } from '../../../support/everyEdit.ts';
import { doublesIn, orphansIn } from '../../../support/orphans.ts';
import { expectFromCatalogue, namesIn } from '../../../support/pseudo.ts';
import { randomProject } from '../../../support/randomProjects.ts';
import { kindsIn, recordedProjects } from '../../../support/recordedProjects.ts';

const top = join(import.meta.dirname, '..', '..', '..', '..');

/** Folders of edits. */
const folders = ['core/model/edits', 'core/quantities/edits', 'core/record/edits'];

/** Files of edits in a folder with much else. */
const files = ['core/locate/faultSearch/keepFaultSearch.ts'];

/** What those files tell besides their edits. */
const noEdits: ReadonlySet<string> = new Set([
  'withDependants',
  'underlaysInOrder',
  'withDrawing',
  'withOwnPrices',
  'handoversOf',
  'nextHandoverNumber',
]);

it('no edit is left out', async () => {
  const inFolders = folders.flatMap((folder) =>
    readdirSync(join(top, folder))
      .filter((name) => name.endsWith('.ts'))
      .map((name) => `${folder}/${name}`),
  );
  for (const file of [...inFolders, ...files]) {
    const exported: Record<string, unknown> = await import(pathToFileURL(join(top, file)).href);
    const edits = Object.keys(exported).filter((name) => {
      return typeof exported[name] === 'function' && !name.startsWith('whyNot') && !noEdits.has(name);
    });
    for (const name of edits)
      expect(attempts, `${file}: ${name} is not in tests/support/everyEdit.ts`).toHaveProperty(name);
  }
});

it('the projects that edits are tried on have things of every kind', () => {
  const seen = new Set(recordedProjects.flatMap(kindsIn));
  expect(kinds.filter((kind) => !seen.has(kind))).toEqual([]);
});

describe.each(Object.keys(attempts))('%s', (name) => {
  it('can be taken back exactly, loses nothing it was not asked to, and leaves a whole project', () => {
    let made = 0;
    fc.assert(
      fc.property(fc.constantFrom(...recordedProjects), dice, (before, thrown) => {
        const edit = attempts[name]!(before, thrown);
        if (!edit) return;
        const refusal = refusalOf(edit, before);
        if (refusal) {
          expect(inEnglish(refusal.message)).toMatch(/^[A-Z].*\.$/);
          expectFromCatalogue(refusal.message, namesIn(before));
          return;
        }
        made++;
        const frozen = snapshot(before);
        const after = edit(before);
        expect(snapshot(before)).toEqual(frozen);
        const changes = difference(before, after);
        expect(snapshot(applyChanges(after, inverse(changes)))).toEqual(frozen);
        expect(snapshot(applyChanges(before, changes))).toEqual(snapshot(after));
        if (!takesAway.has(name)) expectNothingLost(name, before, after);
        expectAnchored(after);
        expect(orphansIn(before)).toEqual([]);
        expect(orphansIn(after)).toEqual([]);
        expect(doublesIn(after)).toEqual([]);
        for (const { after: thing } of changes) {
          if (thing) expect(thingSchema.safeParse(thing).error?.message).toBeUndefined();
        }
      }),
      { seed: 11, numRuns: 60 },
    );
    expect(made).toBeGreaterThan(0);
  });
});

/** Edits that are there to take things away, with all that hangs on them. */
const takesAway: ReadonlySet<string> = new Set([
  'deleteThings',
  'acceptPlan',
  'deleteItem',
  'deleteKit',
  'deleteStage',
  'putInStage',
  'deleteKeptPlan',
  'goBackTo',
  'markPlanned',
  'setDroppers',
  'trackAsTrench',
]);

/** Edits of what is drawn: the others touch no place. */
const editsOfDrawing = Object.keys(attempts).filter((name) => existsSync(join(top, 'core/model/edits', `${name}.ts`)));

/** Those after which a place is on another line: tried more often. */
const recutting = ['splitLine', 'joinLines', 'fixCrossing', 'insertVertex', 'deleteVertex'];

const candidatesOf = (project: Project) => switchCandidates(project, surveyOf(project));

/** The user's word on two of three places where a switch could go, of every sort. */
function withRules(project: Project, n: number): Project {
  return candidatesOf(project).reduce((now, { key }, i) => {
    const rule = ([null, 'forced', 'forbidden'] as const)[(i + n) % 3]!;
    return setRule({ key, rule })(now);
  }, project);
}

/** Things that a rule names and that are not there. */
function missingOf(project: Project): string[] {
  return [...project.switchRule.keys()].filter((id) => {
    const key = parsePlaceKey(id);
    return !key || thingsOfPlaceKey(key).some(({ kind, id: thingId }) => !project[kind].has(thingId));
  });
}

/** Candidates by where they are and why, those that share a spot left out. */
function bySpot(project: Project): Map<string, SwitchCandidate> {
  const all = Map.groupBy(
    candidatesOf(project),
    ({ xy, why }) => `${why} ${xy.map((n) => Math.round(n * 10)).join(' ')}`,
  );
  return new Map([...all].flatMap(([spot, [one, ...more]]) => (one && more.length === 0 ? [[spot, one]] : [])));
}

describe('the user’s word on switch places', () => {
  it('names no thing that is gone, and holds wherever the same place is still one', () => {
    const carried: Record<string, number> = {};
    fc.assert(
      fc.property(
        randomProject,
        dice,
        fc.constantFrom(...editsOfDrawing, ...recutting, ...recutting),
        (bare, thrown, name) => {
          const before = withRules(bare, thrown.n);
          expect(missingOf(before)).toEqual([]);
          const edit = attempts[name]!(before, thrown);
          if (!edit || refusalOf(edit, before)) return;
          const after = edit(before);
          expect(missingOf(after)).toEqual([]);
          // Those take the word back, or take the thing away that it is about; a post or a switch takes it along.
          if (['setRule', 'deleteThings', 'acceptPlan', 'moveThing', 'moveSwitch', 'goBackTo'].includes(name)) return;
          const were = bySpot(before);
          for (const [spot, { key, rule }] of bySpot(after)) {
            const was = were.get(spot);
            if (!was) continue;
            expect(`${name} ${spot} ${was.key} to ${key}: ${rule}`).toBe(
              `${name} ${spot} ${was.key} to ${key}: ${was.rule}`,
            );
            if (key !== was.key && rule) carried[parsePlaceKey(key)!.on] = (carried[parsePlaceKey(key)!.on] ?? 0) + 1;
          }
          const posts = (project: Project) =>
            [...project.switchRule.keys()].filter((id) => parsePlaceKey(id)?.on === 'strainerPost').length;
          if (name !== 'joinLines') expect(posts(after)).toBe(posts(before));
        },
      ),
      { seed: 13, numRuns: 1000 },
    );
    expect(Object.keys(carried)).toEqual(expect.arrayContaining(['corner', 'strainerPost']));
  });
});

describe('deleteThings', () => {
  it('takes exactly what it says beforehand', () => {
    fc.assert(
      fc.property(randomProject, fc.nat(50), (before, n) => {
        const lines = [...before.fenceLine.values()];
        const refs = lines.slice(n % Math.max(1, lines.length));
        const going = withDependants(before, refs);
        const after = deleteThings(refs)(before);
        const gone = difference(before, after).map(({ kind, id }) => `${kind} ${id}`);
        expect(gone.sort()).toEqual(going.map(({ kind, id }) => `${kind} ${id}`).sort());
      }),
      { seed: 12, numRuns: 200 },
    );
  });
});

function snapshot(project: Project): unknown[] {
  return [...allThings(project)].sort((a, b) => (`${a.kind} ${a.id}` < `${b.kind} ${b.id}` ? -1 : 1));
}

/** Only the line that was joined onto another, and a crossing that was asked away, may be gone. */
function expectNothingLost(name: string, before: Project, after: Project): void {
  const lost = difference(before, after).filter((change) => change.after === null && change.kind !== 'switchRule');
  const goes: Readonly<Record<string, readonly string[]>> = {
    joinLines: ['fenceLine', 'builtMark', 'stageMark'],
    setCrossing: ['crossing', 'crossingRecord', 'buriedPoint', 'photo', 'builtMark', 'stageMark'],
  };
  expect(lost.filter(({ kind }) => !goes[name]?.includes(kind))).toEqual([]);
}

/** Everything that is anchored stands on a line that is there, between its ends. */
function expectAnchored(project: Project): void {
  const lengthM = (lineId: string) => {
    expect(project.fenceLine.has(lineId)).toBe(true);
    return pathIn(project, project.fenceLine.get(lineId)!.path).lengthM;
  };
  for (const { lineId, atM, widthM } of project.gateway.values()) {
    const long = lengthM(lineId);
    if (long < widthM) continue;
    expect(atM).toBeGreaterThanOrEqual(widthM / 2 - 0.002);
    expect(atM).toBeLessThanOrEqual(long - widthM / 2 + 0.002);
  }
  for (const { gatewayId } of project.crossing.values()) expect(project.gateway.has(gatewayId)).toBe(true);
  for (const { place } of project.switch.values()) {
    if (place.on === 'gateway') expect(project.gateway.has(place.gatewayId)).toBe(true);
    if (place.on === 'leadOut') expect(project.leadOut.has(place.leadOutId)).toBe(true);
    if (place.on === 'lineEnd') expect(project.fenceLine.has(place.lineId)).toBe(true);
    if (place.on === 'line') {
      expect(place.atM).toBeGreaterThanOrEqual(0);
      expect(place.atM).toBeLessThanOrEqual(lengthM(place.lineId) + 1e-6);
    }
  }
}
