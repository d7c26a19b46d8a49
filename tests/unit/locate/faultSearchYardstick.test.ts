import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { demoThings } from '../../../assets/demo/makeDemo.ts';
import {
  meaningOf,
  withReading,
  withRepeat,
  withRingsOpened,
} from '../../../core/locate/faultSearch/faultSearchEdits.ts';
import { faultSearchGround } from '../../../core/locate/faultSearch/faultSearchGround.ts';
import {
  type FaultSearchState,
  type FaultSearchStep,
  walkFaultSearch,
} from '../../../core/locate/faultSearch/faultSearchWalk.ts';
import { readingInWords } from '../../../core/locate/faultSearch/faultSearchWords.ts';
import { faultSearchYardstick, openForStep } from '../../../core/locate/faultSearch/faultSearchYardstick.ts';
import { planWhole } from '../../../core/locate/faultSearch/testPlan.ts';
import type { FaultSearch } from '../../../core/model/faultSearchThings.ts';
import { type Project, projectOf, propertyOf, put } from '../../../core/model/project.ts';
import { powerOf } from '../../../core/survey/power/powerOf.ts';
import type { Power } from '../../../core/survey/power/types.ts';
import { nodeAtSwitch, standingOf } from '../../../core/survey/power/yardstick.ts';
import { surveyOf } from '../../../core/survey/survey.ts';
import { inEnglish } from '../../support/english.ts';
import { randomDrawing } from '../../support/randomDrawing.ts';

const at = '2031-05-01T08:00';
const startStep: FaultSearchStep = { check: 'start', switchId: null, openIds: [], toOpen: [], toClose: [] };

function newFaultSearch(more: Partial<FaultSearch> = {}): FaultSearch {
  return {
    kind: 'faultHunt',
    id: 'h',
    name: 'Search 1',
    startedAt: at,
    by: '',
    energiserId: 'e',
    saves: 'tests',
    judgedBy: 'usual',
    lowBelowV: 3000,
    goodFromV: 4000,
    openedFirst: [],
    readings: [],
    end: null,
    note: '',
    ...more,
  };
}

/** The search with the reading of a step, judged as the screen judges it; a doubtful one is taken for the nearer. */
function told(
  search: FaultSearch,
  power: Power,
  step: FaultSearchStep,
  voltageV: number,
  state?: FaultSearchState,
): FaultSearch {
  const yardstick = faultSearchYardstick(power, search, step);
  const meaning = meaningOf(yardstick, voltageV);
  const nearer = voltageV - yardstick.lowBelowV > yardstick.goodFromV - voltageV ? 'good' : 'low';
  const answer = { voltageV, result: meaning ?? nearer, doubtful: meaning === null, yardstick } as const;
  if (state?.kind === 'contradiction') return withRepeat(search, state, '', answer, at);
  return withReading(search, step, '', answer, at);
}

describe('a fault is judged by what is usual', () => {
  const project = projectOf(demoThings());
  const survey = surveyOf(project);
  const power = powerOf(project, survey);
  const energiserId = survey.network.sources[0]!.energiserId;
  const ground = faultSearchGround(survey, energiserId)!;
  const openedFirst = planWhole(ground, [], 'tests').openFirst;

  it('on the demo: 4.5 kV where 8.1 kV is estimated is a fault, though stock would be held', () => {
    const search = newFaultSearch({ energiserId, openedFirst });
    const yardstick = faultSearchYardstick(power, search, startStep);
    expect(yardstick).toMatchObject({ by: 'estimate', usualV: expect.closeTo(8100, -2), goodFromV: 6100 });
    expect(meaningOf(yardstick, 4500)).toBe('low');
    const after = told(search, power, startStep, 4500);
    expect(walkFaultSearch(after, ground).state).toMatchObject({ kind: 'read', step: { check: 'test' } });
    expect(inEnglish(readingInWords(after.readings[0]!))).toBe(
      'At the energiser: 4.5 kV, low (usual 8.1 kV, estimated)',
    );
    expect(walkFaultSearch(told(search, power, startStep, 7900), ground).state.kind).toBe('noFault');
  });

  it('by limits of its own, where the search has them, as searches in older files do', () => {
    const { judgedBy: _, ...own } = newFaultSearch({ energiserId, openedFirst });
    expect(faultSearchYardstick(power, own, startStep)).toEqual({
      usualV: null,
      by: 'own',
      lowBelowV: 3000,
      goodFromV: 4000,
    });
    // What was recorded by them stays as it was told.
    const recorded = withReading(own, startStep, '', { voltageV: 4500, result: 'good', doubtful: false }, at);
    expect(walkFaultSearch(recorded, ground).state.kind).toBe('noFault');
    expect(inEnglish(readingInWords(recorded.readings[0]!))).toBe('At the energiser: 4.5 kV, good');
  });
});

/** What would be read with a fault of so many ohm at a node, the switches as for a step. */
function readWith(
  power: Power,
  search: FaultSearch,
  step: FaultSearchStep,
  fault: { node: number; ohm: number },
): number {
  const [supply] = power.supplies;
  const openIds = openForStep(power, search, step);
  const links = (ids: Iterable<string>) => [...ids].flatMap((id) => supply!.linkOfSwitch.get(id) ?? []);
  const open = links(openIds).filter((link) => !supply!.circuit.links[link]!.open);
  const close = links([...power.normallyOpen].filter((id) => !openIds.has(id)));
  const voltages = supply!.prepared.vary({ open, close, faults: [fault] });
  if (!voltages.ok) throw new Error('no answer');
  const node =
    step.switchId === null
      ? supply!.circuit.source.node
      : nodeAtSwitch(power, step.switchId, standingOf(power, openIds));
  return voltages.nodeVoltageV[node!]!;
}

const oneSource = randomDrawing.map((drawn): Project => {
  const property = propertyOf(drawn);
  const one = { ...drawn, energiser: new Map([['e', drawn.energiser.get('e')!]]) };
  return put(one, { ...property, power: { ...property.power, stockMinimumV: 3000 } });
});

describe('on any network with a planted fault', () => {
  it('that makes the energiser read under the limit, the search is never told that there is none, and ends at it', () => {
    const counted = { low: 0, tests: 0 };
    fc.assert(
      fc.property(oneSource, fc.nat(1000), fc.double({ min: 1, max: 2000, noNaN: true }), (project, pick, ohm) => {
        const survey = surveyOf(project);
        const power = powerOf(project, survey);
        const ground = faultSearchGround(survey, 'e');
        const asIs = power.supplies[0]?.prepared.asIs;
        if (!ground || !asIs?.ok) return;
        const fed = survey.network.nodes.flatMap((_, node) => (asIs.reached[node] === 1 ? [node] : []));
        const fault = { node: fed[pick % fed.length]!, ohm };
        let search = newFaultSearch();
        for (let round = 0; round < 60; round++) {
          const walk = walkFaultSearch(search, ground);
          const { state } = walk;
          if (state.kind === 'openFirst') {
            search = withRingsOpened(search, state.switchIds);
            continue;
          }
          const step = state.kind === 'contradiction' ? state.repeat : 'step' in state ? state.step : null;
          if (state.kind === 'noFault') {
            const [start] = search.readings;
            expect(start!.voltageV).toBeGreaterThanOrEqual(start!.yardstick!.lowBelowV);
            return;
          }
          if (!step) {
            if (search.readings.some(({ doubtful }) => doubtful)) return;
            expect(state).toMatchObject({ kind: 'found', confirmed: true });
            if (state.kind !== 'found') return;
            counted.low++;
            counted.tests += walk.tested;
            const { section } = ground.pieces[state.piece]!;
            const holds = survey.sections.flatMap(({ index, nodes }) => (nodes.includes(fault.node) ? [index] : []));
            // A fault at a switch lies at the edge of the pieces on both its sides.
            expect(
              section === null ? holds.length === 0 || isAtSwitch(power, fault.node) : holds.includes(section),
            ).toBe(true);
            return;
          }
          search = told(search, power, step, readWith(power, search, step, fault), state);
        }
        throw new Error('The search does not end.');
      }),
      { seed: 21, numRuns: 600 },
    );
    expect(counted.low).toBeGreaterThan(100);
    expect(counted.tests).toBeGreaterThan(30);
  });
});

function isAtSwitch({ survey: { network } }: Power, node: number): boolean {
  return network.edgesAt[node]!.some((index) => network.edges[index]!.kind === 'switch');
}
