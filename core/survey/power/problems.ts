import { type LabelProblem, labelProblems } from '../../electrical/energiser/labelProblems.ts';
import type { Project } from '../../model/project.ts';
import type { Energiser } from '../../model/things.ts';
import type { Network } from '../../network/types.ts';
import type { PowerProblem } from './types.ts';

export const noLiveFence: PowerProblem = {
  code: 'noLiveFence',
  weight: 'refused',
  message: 'No live fence is drawn, so there is no voltage to estimate.',
  remedy: 'Draw the fences, and mark those live that carry current.',
  source: null,
  thingIds: [],
};

/** What is wrong with the energisers as drawn, before any fence is looked at. */
export function sourceProblems(project: Project, { edges, sources }: Network): PowerProblem[] {
  if (edges.length === 0) return [noLiveFence];
  if (sources.length === 0) {
    const message = 'No energiser is drawn, so the voltage is not known.';
    const remedy = 'Place the energiser and its lead-out in Draw, and enter the figures on its label.';
    return [{ code: 'noEnergiser', weight: 'refused', message, remedy, source: null, thingIds: [] }];
  }
  return sources.flatMap(({ energiserId, node }): PowerProblem[] => {
    if (node !== null) return [];
    const message = `Energiser ${nameOf(project, energiserId)} touches no live fence.`;
    const remedy = 'Draw its lead-out to the fence.';
    const about = { source: null, thingIds: [energiserId] };
    return [{ code: 'energiserTouchesNothing', weight: 'refused', message, remedy, ...about }];
  });
}

export function twoEnergisers(project: Project, ids: readonly string[]): PowerProblem {
  return {
    code: 'twoEnergisers',
    weight: 'refused',
    message: `${listed(ids.map((id) => nameOf(project, id)))} can feed the same fence, so no voltage is estimated for it. One fence is never fed by two energisers.`,
    remedy: 'Take one of them away, or part the fences by a gap of at least 2.5 m that nothing live bridges.',
    source: 'IEC 60335-2-76, Annex BB, BB.1 (paraphrased)',
    thingIds: ids,
  };
}

export function labelProblemsOf(energiser: Energiser): PowerProblem[] {
  return labelProblems(energiser).map(({ severity, message }: LabelProblem): PowerProblem => {
    return {
      code: 'label',
      weight: severity === 'error' ? 'refused' : 'leftOut',
      message: `Energiser ${energiser.name}: ${message}`,
      remedy: 'Correct the figures under Supply.',
      source: null,
      thingIds: [energiser.id],
    };
  });
}

export function noEarthStakes(energiser: Energiser): PowerProblem {
  return {
    code: 'noEarthStakes',
    weight: 'leftOut',
    message: `No earth stakes are drawn for ${energiser.name}: the estimate leaves their resistance out and reads too high.`,
    remedy: 'Add its earth stakes under Earth.',
    source: null,
    thingIds: [energiser.id],
  };
}

/** A conductor that is not in the library and was not entered: by what is made of it. */
export function unknownConductor(what: string, thingIds: readonly string[]): PowerProblem {
  return {
    code: 'unknownConductor',
    weight: 'refused',
    message: `The resistance of ${what} is not known, so no voltage is estimated for the fence it is part of.`,
    remedy: 'Choose a conductor from the list, or enter your own with its ohm per km.',
    source: null,
    thingIds,
  };
}

export function listed(names: readonly string[], most = 4): string {
  const shown = names.length > most ? [...names.slice(0, most - 1), `${names.length - most + 1} more`] : names;
  return shown.length < 2 ? (shown[0] ?? '') : `${shown.slice(0, -1).join(', ')} and ${shown.at(-1)}`;
}

function nameOf(project: Project, id: string): string {
  return project.energiser.get(id)?.name ?? id;
}
