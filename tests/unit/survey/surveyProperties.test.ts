import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Project, put, remove } from '../../../core/model/project.ts';
import { reachOf } from '../../../core/network/reach.ts';
import type { Network } from '../../../core/network/types.ts';
import { surveyOf } from '../../../core/survey/survey.ts';
import { testSheetOf, testSheets } from '../../../core/survey/testSheets.ts';
import type { Survey } from '../../../core/survey/types.ts';
import { randomDrawing } from '../../support/randomDrawing.ts';

const runs = { seed: 30, numRuns: 500 };

/** The same network with these switches open and all others closed. */
function switched(network: Network, isOpen: (switchId: string) => boolean): Network {
  const edges = network.edges.map((edge) => {
    if (edge.kind !== 'switch') return edge;
    return { ...edge, normally: isOpen(edge.switchId) ? ('open' as const) : ('closed' as const) };
  });
  return { ...network, edges };
}

/** Length of fence, gateways and sections that are fed. */
function fedIn(project: Project, { network: _, ...survey }: Survey, network: Network) {
  const { edgeFed } = reachOf(project, network);
  const found = { lengthM: 0, gatewayIds: new Set<string>(), sections: new Set<string>() };
  for (const [index, edge] of network.edges.entries()) {
    if (!edgeFed[index]) continue;
    if (edge.kind === 'run') found.lengthM += edge.lengthM;
    if (edge.kind === 'crossing') found.gatewayIds.add(edge.gatewayId);
    const section = survey.sections[survey.sectionOfEdge[index]!];
    if (section) found.sections.add(section.letter);
  }
  return found;
}

const minus = (a: ReadonlySet<string>, b: ReadonlySet<string>) => new Set([...a].filter((one) => !b.has(one)));

describe('any drawing', () => {
  it('has every run in exactly one section, and sections joined only through switches', () => {
    fc.assert(
      fc.property(randomDrawing, (project) => {
        const { network, sections, sectionOfEdge, totals } = surveyOf(project);
        const listed = sections.flatMap(({ edges }) => edges).sort((a, b) => a - b);
        const inSections = network.edges.flatMap((_, index) => (sectionOfEdge[index]! >= 0 ? [index] : []));
        expect(listed).toEqual(inSections);
        for (const [index, { kind }] of network.edges.entries()) {
          if (kind === 'run' || kind === 'crossing') expect(sectionOfEdge[index]).toBeGreaterThanOrEqual(0);
          if (kind === 'switch') expect(sectionOfEdge[index]).toBe(-1);
        }
        const total = sections.reduce((sum, { lengthM }) => sum + lengthM, 0);
        expect(total).toBeCloseTo(totals.liveFenceM, 6);
        const sectionOfNode = new Map(sections.flatMap(({ nodes, index }) => nodes.map((node) => [node, index])));
        for (const { kind, from, to } of network.edges) {
          if (kind !== 'switch') expect(sectionOfNode.get(from)).toBe(sectionOfNode.get(to));
        }
      }),
      runs,
    );
  });

  it('has switches that cut off what opening each one alone shows', () => {
    fc.assert(
      fc.property(randomDrawing, (project) => {
        const survey = surveyOf(project);
        const { network } = survey;
        const standsOpen = (id: string) => project.switch.get(id)!.normally === 'open';
        for (const row of survey.switches) {
          const { id } = row.switch;
          if (!network.edgeOfSwitch.has(id)) {
            expect(row.cutsOff.lengthM).toBe(0);
            continue;
          }
          const closed = fedIn(
            project,
            survey,
            switched(network, (other) => other !== id && standsOpen(other)),
          );
          const opened = fedIn(
            project,
            survey,
            switched(network, (other) => other === id || standsOpen(other)),
          );
          expect(row.cutsOff.lengthM).toBeCloseTo(closed.lengthM - opened.lengthM, 6);
          expect(new Set(row.cutsOff.gatewayIds)).toEqual(minus(closed.gatewayIds, opened.gatewayIds));
          expect(new Set(row.cutsOff.sections)).toEqual(minus(closed.sections, opened.sections));
        }
      }),
      runs,
    );
  });

  it('has switches that say which of their sides have current without them', () => {
    fc.assert(
      fc.property(randomDrawing, (project) => {
        const survey = surveyOf(project);
        const { network } = survey;
        const standsOpen = (id: string) => project.switch.get(id)!.normally === 'open';
        for (const { switch: cutOut, feed } of survey.switches) {
          const edge = network.edges[network.edgeOfSwitch.get(cutOut.id) ?? -1];
          if (!edge) {
            expect(feed.from).toBe('notInFence');
            continue;
          }
          // Taken out alone, the others standing as they do, a side that is still fed has current without it.
          const { nodeFed } = reachOf(
            project,
            switched(network, (id) => id === cutOut.id || standsOpen(id)),
          );
          const fedSides = nodeFed[edge.from]! + nodeFed[edge.to]!;
          expect(feed.from).toBe((['nowhere', 'oneSide', 'bothSides'] as const)[fedSides]);
          expect(feed.off).toBe(standsOpen(cutOut.id));
          const letterAt = (node: number) => survey.sections.find(({ nodes }) => nodes.includes(node))?.letter ?? null;
          if (feed.from === 'oneSide') {
            const [supply, far] = nodeFed[edge.from] ? [edge.from, edge.to] : [edge.to, edge.from];
            expect([feed.supply, feed.far]).toEqual([letterAt(supply), letterAt(far)]);
          } else if (feed.from !== 'notInFence') expect(feed.sides).toEqual([letterAt(edge.from), letterAt(edge.to)]);
        }
      }),
      runs,
    );
  });

  it('has test sheets that leave just the section and the way to it live, and can cut it off', () => {
    const oneSource = randomDrawing.map((project) => ({
      ...project,
      energiser: new Map([['e', project.energiser.get('e')!]]),
    }));
    fc.assert(
      fc.property(oneSource, (project: Project) => {
        const survey = surveyOf(project);
        for (const [index, sheet] of testSheets(project, survey).entries()) {
          expect(testSheetOf(project, survey, survey.sections[index]!)).toEqual(sheet);
          if (sheet.live.length === 0) continue;
          const state = fedIn(
            project,
            survey,
            switched(survey.network, (id) => sheet.open.includes(id)),
          );
          expect(state.sections).toEqual(new Set(sheet.live));
          expect(sheet.live.at(-1)).toBe(sheet.section);
          expect(sheet.open.filter((id) => sheet.closed.includes(id))).toEqual([]);
          const section = survey.sections.find(({ letter }) => letter === sheet.section)!;
          if (section.holdsEnergiser) continue;
          const cut = fedIn(
            project,
            survey,
            switched(survey.network, (id) => sheet.cutOff.includes(id)),
          );
          expect(cut.sections.has(sheet.section)).toBe(false);
        }
      }),
      runs,
    );
  });

  it('surveys the same after an edit as from nothing', () => {
    fc.assert(
      fc.property(randomDrawing, randomDrawing, fc.nat(9), (project, other, pick) => {
        const things = [...other.fenceLine.values(), ...other.gateway.values(), ...other.switch.values()];
        const thing = things[pick % things.length]!;
        const own = [...project.fenceLine.values()][pick % project.fenceLine.size]!;
        const before = { project, survey: surveyOf(project) };
        for (const edited of [put(project, thing), remove(project, own)]) {
          const { plane, ...after } = surveyOf(edited, before);
          const { plane: __, ...fresh } = surveyOf(structuredClone(edited));
          expect(after).toEqual(fresh);
          expect(plane).toBe(before.survey.plane);
        }
      }),
      { seed: 31, numRuns: 200 },
    );
  });
});
