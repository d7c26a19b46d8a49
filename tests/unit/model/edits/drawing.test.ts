import { describe, expect, it } from 'vitest';
import { distanceM } from '../../../../core/geometry/geodesic.ts';
import { newFenceType } from '../../../../core/model/defaults.ts';
import { addFenceLine, whyNotAddFenceLine } from '../../../../core/model/edits/addFenceLine.ts';
import { changeThing, whyNotChangeThing } from '../../../../core/model/edits/changeThing.ts';
import { deleteThings } from '../../../../core/model/edits/deleteThings.ts';
import { deleteVertex, whyNotDeleteVertex } from '../../../../core/model/edits/deleteVertex.ts';
import { drawLeadOut, whyNotDrawLeadOut } from '../../../../core/model/edits/drawLeadOut.ts';
import { insertVertex } from '../../../../core/model/edits/insertVertex.ts';
import { joinLines } from '../../../../core/model/edits/joinLines.ts';
import { moveVertex } from '../../../../core/model/edits/moveVertex.ts';
import { placeEnergiser } from '../../../../core/model/edits/placeEnergiser.ts';
import { placeGateway, whyNotPlaceGateway } from '../../../../core/model/edits/placeGateway.ts';
import { placePost } from '../../../../core/model/edits/placePost.ts';
import { placeSwitch } from '../../../../core/model/edits/placeSwitch.ts';
import { EditRefused } from '../../../../core/model/edits/support/edit.ts';
import { pathIn } from '../../../../core/model/edits/support/path.ts';
import { type Project, put } from '../../../../core/model/project.ts';
import type { LonLat } from '../../../../core/model/things.ts';
import { lonLatAt } from '../../../../core/shapes/measuredPath.ts';
import { inEnglish } from '../../../support/english.ts';
import { countingIds } from '../../../support/ids.ts';
import { at, emptyProject } from '../../../support/randomProjects.ts';

const typeId = 'ft-2';

/** A trunk of 400 m to the east with a corner half-way, and a spur going north from 100 m along. */
function trunkAndSpur(): Project {
  const newId = countingIds();
  const trunk = addFenceLine({ path: [at(0, 0), at(200, 0), at(400, 0)], typeId }, newId)(emptyProject());
  return addFenceLine({ path: [at(100, 0), at(100, 300)], typeId }, newId)(trunk);
}

const gatewayAt = (project: Project, id = 'gateway-1'): LonLat => {
  const gateway = project.gateway.get(id)!;
  return lonLatAt(pathIn(project, project.fenceLine.get(gateway.lineId)!.path), gateway.atM);
};

describe('addFenceLine', () => {
  it('names lines one after another and leaves out doubled vertices', () => {
    const newId = countingIds();
    const one = addFenceLine({ path: [at(0, 0), at(0, 0), at(50, 0)], typeId }, newId)(emptyProject());
    const two = addFenceLine({ path: [at(0, 0), at(0, 50)], typeId }, newId)(one);
    expect([...two.fenceLine.values()].map(({ name, path }) => [name, path.length])).toEqual([
      ['F1', 2],
      ['F2', 2],
    ]);
  });

  it.each([
    ['tooFewPoints', [at(0, 0)]],
    ['noLength', [at(0, 0), at(0, 0)]],
    ['outOfRange', [at(0, 0), [200, 0]]],
    ['outOfRange', [at(0, 0), [Number.NaN, 0]]],
    ['tooFar', [at(0, 0), [20, 10]]],
  ] as [string, LonLat[]][])('refuses a path as %s', (code, path) => {
    const refusal = whyNotAddFenceLine({ path, typeId })(emptyProject());
    expect(refusal?.code).toBe(code);
    expect(() => addFenceLine({ path, typeId }, countingIds())(emptyProject())).toThrow(EditRefused);
  });

  it('refuses a fence type that is not there', () => {
    expect(whyNotAddFenceLine({ path: [at(0, 0), at(9, 0)], typeId: 'x' })(emptyProject())?.code).toBe('notFound');
  });
});

/** The first line with another that is drawn and joined onto it. */
function joinedOn(project: Project, path: readonly LonLat[]): Project {
  const drawn = addFenceLine({ path, typeId: project.fenceLine.get('fenceLine-1')!.typeId }, () => 'further')(project);
  return joinLines({ lineId: 'fenceLine-1', otherId: 'further' })(drawn);
}

describe('what stands on a line goes with it', () => {
  it('keeps a gateway at its point when a vertex is put in or taken out on the line', () => {
    const before = placeGateway({ lineId: 'fenceLine-1', atM: 320 }, countingIds())(trunkAndSpur());
    const after = insertVertex({ lineId: 'fenceLine-1', segment: 0, at: at(40, 0) })(before);
    expect(distanceM(gatewayAt(before), gatewayAt(after))).toBeLessThan(1e-6);
    const back = deleteVertex({ lineId: 'fenceLine-1', index: 2 })(after);
    expect(distanceM(gatewayAt(before), gatewayAt(back))).toBeLessThan(1e-3);
  });

  it('keeps a gateway at its share of a segment that is stretched', () => {
    const before = placeGateway({ lineId: 'fenceLine-1', atM: 300 }, countingIds())(trunkAndSpur());
    const after = moveVertex({ lineId: 'fenceLine-1', index: 2, to: at(600, 0) })(before);
    expect(after.gateway.get('gateway-1')!.atM).toBeCloseTo(400, 3);
  });

  it('keeps a gateway at its point when a line is joined on before its start', () => {
    const before = placeGateway({ lineId: 'fenceLine-1', atM: 300 }, countingIds())(trunkAndSpur());
    const after = joinedOn(before, [at(-100, 0), at(0, 0)]);
    expect(after.gateway.get('gateway-1')!.atM).toBeCloseTo(400, 3);
    expect(distanceM(gatewayAt(before), gatewayAt(after))).toBeLessThan(1e-6);
  });

  it('makes a switch at an end that a line is joined onto a switch along the line', () => {
    const before = placeSwitch(
      { place: { on: 'lineEnd', lineId: 'fenceLine-1', end: 'end' } },
      countingIds(),
    )(trunkAndSpur());
    const after = joinedOn(before, [at(400, 0), at(500, 0)]);
    expect(after.switch.get('switch-1')!.place).toEqual({
      on: 'line',
      lineId: 'fenceLine-1',
      atM: expect.closeTo(400, 3),
    });
  });

  it('moves the word on a strainer to the new number of its vertex', () => {
    const rule = { kind: 'switchRule', id: 'strainer:fenceLine-1:1', rule: 'forced' } as const;
    const before = { ...trunkAndSpur(), switchRule: new Map([[rule.id, rule]]) };
    const after = insertVertex({ lineId: 'fenceLine-1', segment: 0, at: at(40, 5) })(before);
    expect([...after.switchRule.keys()]).toEqual(['strainer:fenceLine-1:2']);
    const gone = deleteVertex({ lineId: 'fenceLine-1', index: 2 })(after);
    expect(gone.switchRule.size).toBe(0);
  });

  it('will not take away an end piece with a gateway on it', () => {
    const before = placeGateway({ lineId: 'fenceLine-1', atM: 300 }, countingIds())(trunkAndSpur());
    const refusal = whyNotDeleteVertex({ lineId: 'fenceLine-1', index: 2 })(before);
    expect(refusal?.code).toBe('holdsThings');
    expect(inEnglish(refusal?.message)).toContain('G1');
    expect(whyNotDeleteVertex({ lineId: 'fenceLine-1', index: 0 })(before)).toBeNull();
  });

  it('keeps a gateway on a closed line that loses the vertex where it begins', () => {
    const newId = countingIds();
    const square = [at(0, 0), at(100, 0), at(100, 100), at(0, 100), at(0, 0)];
    const drawn = addFenceLine({ path: square, typeId }, newId)(emptyProject());
    const before = placeGateway({ lineId: 'fenceLine-1', atM: 150 }, newId)(drawn);
    const after = deleteVertex({ lineId: 'fenceLine-1', index: 0 })(before);
    expect(after.fenceLine.get('fenceLine-1')!.path).toHaveLength(4);
    expect(distanceM(gatewayAt(before), gatewayAt(after))).toBeLessThan(1e-6);
  });
});

describe('moveVertex', () => {
  it('brings along the lines, posts and lead-outs that join the vertex', () => {
    const newId = countingIds();
    let project = addFenceLine({ path: [at(0, 0), at(100, 0)], typeId }, newId)(emptyProject());
    project = addFenceLine({ path: [at(100, 0), at(100, 90)], typeId }, newId)(project);
    project = placePost({ at: at(100, 0) }, newId)(project);
    project = placeEnergiser({ at: at(130, -20) }, newId)(project);
    project = drawLeadOut({ energiserId: 'energiser-1', path: [at(100, 0)] }, newId)(project);
    const to = at(110, 10);
    const after = moveVertex({ lineId: 'fenceLine-1', index: 1, to })(project);
    expect(after.fenceLine.get('fenceLine-2')!.path[0]).toEqual(to);
    expect(after.post.get('post-1')!.at).toEqual(to);
    expect(after.leadOut.get('leadOut-1')!.path.at(-1)).toEqual(to);
    const alone = moveVertex({ lineId: 'fenceLine-1', index: 1, to, alone: true })(project);
    expect(alone.fenceLine.get('fenceLine-2')).toBe(project.fenceLine.get('fenceLine-2'));
    expect(alone.post).toBe(project.post);
  });

  it('keeps a spur on the segment that it takes off from', () => {
    const after = moveVertex({ lineId: 'fenceLine-1', index: 0, to: at(0, 80) })(trunkAndSpur());
    expect(distanceM(after.fenceLine.get('fenceLine-2')!.path[0]!, at(100, 40))).toBeLessThan(0.01);
  });
});

describe('placeGateway', () => {
  it('comes with a crossing in a live line, and without in a dead one', () => {
    const newId = countingIds();
    const live = placeGateway({ lineId: 'fenceLine-1', atM: 50 }, newId)(trunkAndSpur());
    expect([...live.crossing.values()].map(({ gatewayId }) => gatewayId)).toEqual(['gateway-1']);
    const dead = changeThing({ kind: 'fenceLine', id: 'fenceLine-2', to: { live: false } })(live);
    expect(placeGateway({ lineId: 'fenceLine-2', atM: 50 }, newId)(dead).crossing.size).toBe(1);
  });

  it.each([
    ['wider than any gate', { lineId: 'fenceLine-1', atM: 200, widthM: 500 }, 'notValid'],
    ['past the end', { lineId: 'fenceLine-1', atM: 399 }, 'offLine'],
    ['off the line', { lineId: 'fenceLine-1', atM: 900 }, 'offLine'],
    ['over the spur', { lineId: 'fenceLine-1', atM: 101 }, 'lineJoinsInside'],
    ['over another', { lineId: 'fenceLine-1', atM: 52 }, 'overlaps'],
    ['no such line', { lineId: 'fenceLine-9', atM: 52 }, 'notFound'],
  ])('refuses one %s', (_, wanted, code) => {
    const project = placeGateway({ lineId: 'fenceLine-1', atM: 50 }, countingIds())(trunkAndSpur());
    expect(whyNotPlaceGateway(wanted)(project)?.code).toBe(code);
  });

  it('refuses one wider than its line, wider than its run, and one around a corner', () => {
    const newId = countingIds();
    let project = addFenceLine({ path: [at(0, 0), at(3, 0)], typeId }, newId)(emptyProject());
    expect(whyNotPlaceGateway({ lineId: 'fenceLine-1', atM: 1 })(project)?.code).toBe('tooWide');
    project = addFenceLine({ path: [at(0, 500), at(100, 500), at(100, 600)], typeId }, newId)(project);
    expect(whyNotPlaceGateway({ lineId: 'fenceLine-2', atM: 100 })(project)?.code).toBe('acrossCorner');
    for (const x of [40, 43]) project = addFenceLine({ path: [at(x, 500), at(x, 700)], typeId }, newId)(project);
    expect(whyNotPlaceGateway({ lineId: 'fenceLine-2', atM: 41.5 })(project)?.code).toBe('runTooShort');
    expect(whyNotPlaceGateway({ lineId: 'fenceLine-2', atM: 41.5, widthM: 3 })(project)).toBeNull();
  });
});

describe('drawLeadOut', () => {
  it('begins at the energiser and must end on a live line', () => {
    const newId = countingIds();
    const project = placeEnergiser({ at: at(20, -30) }, newId)(trunkAndSpur());
    const wanted = { energiserId: 'energiser-1', path: [at(20, 0)] };
    const drawn = drawLeadOut(wanted, newId)(project).leadOut.get('leadOut-1')!;
    expect(drawn.path).toEqual([at(20, -30), at(20, 0)]);
    expect(whyNotDrawLeadOut({ ...wanted, path: [at(20, -10)] })(project)?.code).toBe('touchesNothing');
  });
});

describe('deleteThings', () => {
  it('takes with a line its gateways, their crossings and its switches, and nothing else', () => {
    const newId = countingIds();
    let project = placeGateway({ lineId: 'fenceLine-1', atM: 50 }, newId)(trunkAndSpur());
    project = placeGateway({ lineId: 'fenceLine-2', atM: 50 }, newId)(project);
    project = placeSwitch({ place: { on: 'gateway', gatewayId: 'gateway-1', post: 'start' } }, newId)(project);
    project = placeSwitch({ place: { on: 'lineEnd', lineId: 'fenceLine-2', end: 'start' } }, newId)(project);
    const after = deleteThings([{ kind: 'fenceLine', id: 'fenceLine-1' }])(project);
    expect([...after.gateway.keys()]).toEqual(['gateway-2']);
    expect([...after.crossing.values()].map(({ gatewayId }) => gatewayId)).toEqual(['gateway-2']);
    expect([...after.switch.keys()]).toEqual(['switch-2']);
  });

  it('will not take a fence type that lines are made of, nor a conductor that a fence type is made of', () => {
    expect(() => deleteThings([{ kind: 'fenceType', id: typeId }])(trunkAndSpur())).toThrow(/in use/);
    const own = { kind: 'conductor', id: 'own', name: 'Own', ohmPerKm: 40, note: '' } as const;
    const wired = put(trunkAndSpur(), own, newFenceType('of-own', 'Of own', { plainWireId: 'own' }));
    expect(() => deleteThings([{ kind: 'conductor', id: 'own' }])(wired)).toThrow(/in use: fence type Of own/);
  });
});

describe('changeThing', () => {
  it.each([
    ['a width', { kind: 'gateway', id: 'gateway-1', to: { widthM: 9 } }, 'ownEdit'],
    ['a depth below zero', { kind: 'crossing', id: 'crossing-1', to: { depthM: -1 } }, 'notValid'],
    ['a depth that is not a number', { kind: 'crossing', id: 'crossing-1', to: { depthM: Number.NaN } }, 'notValid'],
    ['an unknown field', { kind: 'crossing', id: 'crossing-1', to: { colour: 'red' } }, 'notValid'],
    ['a field of every object', { kind: 'crossing', id: 'crossing-1', to: { constructor: 1 } }, 'notValid'],
    ['an empty name', { kind: 'gateway', id: 'gateway-1', to: { name: ' ' } }, 'notValid'],
    ['a fence type that is not there', { kind: 'fenceLine', id: 'fenceLine-1', to: { typeId: 'x' } }, 'notFound'],
  ] as const)('refuses %s', (_, wanted, code) => {
    const project = placeGateway({ lineId: 'fenceLine-1', atM: 50 }, countingIds())(trunkAndSpur());
    expect(whyNotChangeThing(wanted as never)(project)?.code).toBe(code);
  });

  it('returns the same project when nothing changes', () => {
    const project = trunkAndSpur();
    expect(changeThing({ kind: 'fenceLine', id: 'fenceLine-1', to: { live: true } })(project)).toBe(project);
  });
});
