import fc from 'fast-check';
import { createLocalPlane } from '../../core/geometry/localPlane.ts';
import type { Xy } from '../../core/geometry/types.ts';
import { newProperty, startingFenceTypes } from '../../core/model/defaults.ts';
import { addFenceLine, whyNotAddFenceLine } from '../../core/model/edits/addFenceLine.ts';
import { drawLeadOut, whyNotDrawLeadOut } from '../../core/model/edits/drawLeadOut.ts';
import { placeEnergiser } from '../../core/model/edits/placeEnergiser.ts';
import { placeGateway, whyNotPlaceGateway } from '../../core/model/edits/placeGateway.ts';
import { placePost } from '../../core/model/edits/placePost.ts';
import { placeSwitch, whyNotPlaceSwitch } from '../../core/model/edits/placeSwitch.ts';
import type { Edit, WhyNot } from '../../core/model/edits/support/edit.ts';
import { pathIn } from '../../core/model/edits/support/path.ts';
import { type Project, projectOf } from '../../core/model/project.ts';
import type { LonLat, SwitchPlace } from '../../core/model/things.ts';
import { countingIds } from './ids.ts';

/** Open ocean: no real farm stands there. */
export const testOrigin: LonLat = [-31.5, -42.25];
export const testPlane = createLocalPlane(testOrigin);

/** A place of the working plane as degrees. */
export const at = (x: number, y: number): LonLat => testPlane.toLonLat([x, y]);

/** A property with nothing drawn. */
export function emptyProject(origin: LonLat = testOrigin): Project {
  return projectOf([newProperty('A test', origin), ...startingFenceTypes()]);
}

/** Makes one edit after another, passing over those that are refused. */
export function edited(project: Project, ...edits: readonly (readonly [WhyNot, Edit])[]): Project {
  return edits.reduce((now, [whyNot, edit]) => (whyNot(now) ? now : edit(now)), project);
}

const metres = fc.integer({ min: -3000, max: 3000 });
const share = fc.integer({ min: 0, max: 1000 }).map((n) => n / 1000);
/** Where a line takes off from one drawn before: at a corner or between, joined or a small gap away. */
const takeOff = fc.record({
  line: fc.nat(20),
  segment: fc.nat(20),
  share: fc.oneof(fc.constantFrom(0, 1), share),
  gapM: fc.constantFrom(0, 0, 0, 1.5),
});
const corner: fc.Arbitrary<Xy> = fc.tuple(metres, metres);

/**
 * Drawings as a person might leave them half-way: lines that join, take off, cross and close; gateways with their
 * crossings; switches of every sort; an energiser with its lead-out; posts on some corners.
 */
export const randomProject: fc.Arbitrary<Project> = fc
  .record({
    lines: fc.array(
      fc.record({
        corners: fc.array(corner, { minLength: 2, maxLength: 6 }),
        closed: fc.boolean(),
        live: fc.integer({ min: 0, max: 4 }).map((n) => n > 0),
        takesOff: fc.option(takeOff),
        typeIndex: fc.constantFrom(0, 0, 0, 1, 2),
      }),
      { minLength: 1, maxLength: 7 },
    ),
    gateways: fc.array(
      fc.record({
        line: fc.nat(20),
        share,
        widthM: fc.integer({ min: 20, max: 90 }).map((n) => n / 10),
        left: fc.boolean(),
      }),
      {
        maxLength: 8,
      },
    ),
    switches: fc.array(fc.record({ sort: fc.nat(3), which: fc.nat(20), share, end: fc.boolean() }), { maxLength: 6 }),
    posts: fc.array(fc.tuple(fc.nat(20), fc.nat(20)), { maxLength: 4 }),
    energiser: fc.option(fc.tuple(corner, fc.nat(20), fc.nat(20))),
  })
  .map(({ lines, gateways, switches, posts, energiser }) => {
    const newId = countingIds();
    let project = emptyProject();
    const lineAt = (n: number) => [...project.fenceLine.values()][n % Math.max(1, project.fenceLine.size)];
    const vertexAt = (line: number, vertex: number) => {
      const path = lineAt(line)?.path;
      return path?.[vertex % path.length];
    };
    const attempt = (whyNot: WhyNot, edit: Edit) => {
      project = edited(project, [whyNot, edit]);
    };
    for (const { corners, closed, live, takesOff, typeIndex } of lines) {
      const drawn = corners.map(([x, y]) => at(x, y));
      const trunk = takesOff && pointBeside(lineAt(takesOff.line)?.path, takesOff);
      const path = trunk ? [trunk, ...drawn.slice(1)] : closed && drawn.length > 2 ? [...drawn, drawn[0]!] : drawn;
      const wanted = { path, live, typeId: startingFenceTypes()[typeIndex]!.id };
      attempt(whyNotAddFenceLine(wanted), addFenceLine(wanted, newId));
    }
    for (const { line: n, share, widthM, left } of gateways) {
      const line = lineAt(n);
      if (!line) continue;
      const atM = share * pathIn(project, line.path).lengthM;
      const opens = left ? ('left' as const) : ('right' as const);
      const wanted = { lineId: line.id, atM, widthM, opens, leaves: widthM > 6 ? (2 as const) : (1 as const) };
      attempt(whyNotPlaceGateway(wanted), placeGateway(wanted, newId));
    }
    if (energiser) {
      const [[x, y], line, vertex] = energiser;
      project = placeEnergiser({ at: at(x, y) }, newId)(project);
      const end = vertexAt(line, vertex);
      if (end) {
        const wanted = { energiserId: 'energiser-1', path: [end] };
        attempt(whyNotDrawLeadOut(wanted), drawLeadOut(wanted, newId));
      }
    }
    for (const { sort, which, share, end } of switches) {
      const place = switchPlace(project, sort, which, share, end);
      if (place) attempt(whyNotPlaceSwitch({ place }), placeSwitch({ place }, newId));
    }
    for (const [line, vertex] of posts) {
      const place = vertexAt(line, vertex);
      if (place) project = placePost({ at: place }, newId)(project);
    }
    return project;
  });

interface TakeOff {
  readonly segment: number;
  readonly share: number;
  readonly gapM: number;
}

function pointBeside(path: readonly LonLat[] | undefined, { segment, share, gapM }: TakeOff): LonLat | null {
  if (!path) return null;
  const i = segment % (path.length - 1);
  const [ax, ay] = testPlane.toXy(path[i]!);
  const [bx, by] = testPlane.toXy(path[i + 1]!);
  return at(ax + (bx - ax) * share + gapM, ay + (by - ay) * share);
}

function switchPlace(project: Project, sort: number, which: number, share: number, end: boolean): SwitchPlace | null {
  const line = [...project.fenceLine.values()][which % project.fenceLine.size];
  const gateway = [...project.gateway.values()][which % Math.max(1, project.gateway.size)];
  const lineEnd = end ? 'end' : 'start';
  if (sort === 0 && gateway) return { on: 'gateway', gatewayId: gateway.id, post: lineEnd };
  if (sort === 1 && line) return { on: 'lineEnd', lineId: line.id, end: lineEnd };
  if (sort === 2 && line) return { on: 'line', lineId: line.id, atM: share * pathIn(project, line.path).lengthM };
  return project.leadOut.has('leadOut-1') ? { on: 'leadOut', leadOutId: 'leadOut-1' } : null;
}
