import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { applyChanges, difference, inverse } from '../../../../core/model/difference.ts';
import { deleteThings, withDependants } from '../../../../core/model/edits/deleteThings.ts';
import { setRule } from '../../../../core/model/edits/setRule.ts';
import { EditRefused } from '../../../../core/model/edits/support/edit.ts';
import { pathIn } from '../../../../core/model/edits/support/path.ts';
import { parsePlaceKey, thingsOfPlaceKey } from '../../../../core/model/placeKey.ts';
import { allThings, type Project } from '../../../../core/model/project.ts';
import { switchCandidates } from '../../../../core/survey/candidates.ts';
import { surveyOf } from '../../../../core/survey/survey.ts';
import type { SwitchCandidate } from '../../../../core/survey/types.ts';
import { inEnglish } from '../../../support/english.ts';
import { attempts, dice } from '../../../support/everyEdit.ts';
import { expectFromCatalogue, namesIn } from '../../../support/pseudo.ts';
import { randomProject } from '../../../support/randomProjects.ts';

describe.each(Object.keys(attempts))('%s', (name) => {
  it('can be taken back exactly, loses nothing it was not asked to, and refuses as it said it would', () => {
    let made = 0;
    fc.assert(
      fc.property(randomProject, dice, (before, thrown) => {
        const attempt = attempts[name]!(before, thrown);
        if (!attempt) return;
        const [whyNot, edit] = attempt;
        const refusal = whyNot(before);
        if (refusal) {
          expect(inEnglish(refusal.message)).toMatch(/^[A-Z].*\.$/);
          expectFromCatalogue(refusal.message, namesIn(before));
          expect(() => edit(before)).toThrow(EditRefused);
          return;
        }
        made++;
        const frozen = snapshot(before);
        const after = edit(before);
        expect(snapshot(before)).toEqual(frozen);
        const changes = difference(before, after);
        expect(snapshot(applyChanges(after, inverse(changes)))).toEqual(frozen);
        expect(snapshot(applyChanges(before, changes))).toEqual(snapshot(after));
        if (name !== 'deleteThings' && name !== 'acceptPlan') expectNothingLost(name, before, after);
        expectAnchored(after);
      }),
      { seed: 11, numRuns: 200 },
    );
    expect(made).toBeGreaterThan(0);
  });
});

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
      fc.property(randomProject, dice, fc.constantFrom(...Object.keys(attempts)), (bare, thrown, name) => {
        const before = withRules(bare, thrown.n);
        expect(missingOf(before)).toEqual([]);
        const attempt = attempts[name]!(before, thrown);
        if (!attempt || attempt[0](before)) return;
        const after = attempt[1](before);
        expect(missingOf(after)).toEqual([]);
        // Those take the word back, or take the thing away that it is about; a post takes it along.
        if (['setRule', 'deleteThings', 'acceptPlan', 'moveThing'].includes(name)) return;
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
      }),
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
  const allowed = name === 'joinLines' ? 'fenceLine' : name === 'setCrossing' ? 'crossing' : null;
  expect(lost.filter(({ kind }) => kind !== allowed)).toEqual([]);
  expect(lost.length).toBeLessThanOrEqual(1);
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
