import { type LabelProblem, labelProblems } from '../../electrical/energiser/labelProblems.ts';
import type { Project } from '../../model/project.ts';
import type { Energiser } from '../../model/things.ts';
import type { Network } from '../../network/types.ts';
import { message, type ValuesOf } from '../../words/message.ts';
import type { PowerProblem } from './types.ts';

/** The least gap between fences of two energisers, IEC 60335-2-76, Annex BB, BB.1 (paraphrased). */
export const leastFenceGapM = 2.5;

export const noLiveFence: PowerProblem = {
  code: 'noLiveFence',
  weight: 'refused',
  message: message('power.problems.noLiveFence'),
  remedy: message('power.problems.noLiveFenceRemedy'),
  source: null,
  thingIds: [],
};

/** What is wrong with the energisers as drawn, before any fence is looked at. */
export function sourceProblems(project: Project, { edges, sources }: Network): PowerProblem[] {
  if (edges.length === 0) return [noLiveFence];
  if (sources.length === 0) {
    return [
      {
        code: 'noEnergiser',
        weight: 'refused',
        message: message('power.problems.noEnergiser'),
        remedy: message('power.problems.noEnergiserRemedy'),
        source: null,
        thingIds: [],
      },
    ];
  }
  return sources.flatMap(({ energiserId, node }): PowerProblem[] => {
    if (node !== null) return [];
    return [
      {
        code: 'energiserTouchesNothing',
        weight: 'refused',
        message: message('power.problems.energiserTouchesNothing', { name: nameOf(project, energiserId) }),
        remedy: message('power.problems.energiserTouchesNothingRemedy'),
        source: null,
        thingIds: [energiserId],
      },
    ];
  });
}

export function twoEnergisers(project: Project, ids: readonly string[]): PowerProblem {
  return {
    code: 'twoEnergisers',
    weight: 'refused',
    message: message('power.problems.twoEnergisers', { names: ids.map((id) => nameOf(project, id)) }),
    remedy: message('checks.twoEnergisers.remedy', { gapM: leastFenceGapM }),
    source: message('checks.source.standard'),
    thingIds: ids,
  };
}

export function labelProblemsOf(energiser: Energiser): PowerProblem[] {
  return labelProblems(energiser).map(({ severity, message: problem }: LabelProblem): PowerProblem => {
    return {
      code: 'label',
      weight: severity === 'error' ? 'refused' : 'leftOut',
      message: message('power.problems.label', { name: energiser.name, problem }),
      remedy: message('power.problems.labelRemedy'),
      source: null,
      thingIds: [energiser.id],
    };
  });
}

export function noEarthStakes(energiser: Energiser): PowerProblem {
  return {
    code: 'noEarthStakes',
    weight: 'leftOut',
    message: message('power.problems.noEarthStakes', { name: energiser.name }),
    remedy: message('power.problems.noEarthStakesRemedy'),
    source: null,
    thingIds: [energiser.id],
  };
}

/** A conductor that is not in the library and was not entered: by what is made of it. */
export function unknownConductor(
  of: ValuesOf<'power.problems.unknownConductor'>['of'],
  thingIds: readonly string[],
): PowerProblem {
  return {
    code: 'unknownConductor',
    weight: 'refused',
    message: message('power.problems.unknownConductor', { of }),
    remedy: message('power.problems.unknownConductorRemedy'),
    source: null,
    thingIds,
  };
}

function nameOf(project: Project, id: string): string {
  return project.energiser.get(id)?.name ?? id;
}
