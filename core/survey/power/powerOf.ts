import type { CircuitProblem } from '../../electrical/circuit/circuitProblems.ts';
import { prepareVoltage } from '../../electrical/preparedVoltage.ts';
import { keptWhile } from '../../model/memo.ts';
import type { Project } from '../../model/project.ts';
import { refTo } from '../../model/refTo.ts';
import type { Network } from '../../network/types.ts';
import { message } from '../../words/message.ts';
import type { ThingRef } from '../../words/types.ts';
import type { Survey } from '../types.ts';
import { supplyCircuits } from './supplyCircuits.ts';
import { notKnown, type Power, type PowerProblem, type Supply, type SupplyCircuit } from './types.ts';

/**
 * The circuits of a drawing, eliminated and ready to be asked with the switches standing one way or another
 * (`estimateOf`). Worked out once for each survey.
 */
export function powerOf(project: Project, survey: Survey): Power {
  return prepared(survey, project);
}

const prepared = keptWhile((survey: Survey, project: Project): Power => prepare(project, survey));

function prepare(project: Project, survey: Survey): Power {
  const { network } = survey;
  const found = supplyCircuits(project, network);
  const problems = [...found.problems];
  const supplies: Supply[] = [];
  /** Index in `supplies` of each circuit; those that can't be solved have none. */
  const indexOf: number[] = [];
  for (const supply of found.supplies) {
    const prepared = prepareVoltage(supply.circuit);
    if (prepared.ok && prepared.asIs.ok) {
      indexOf.push(supplies.length);
      supplies.push({ ...supply, prepared });
    } else {
      indexOf.push(notKnown);
      const refusals = prepared.ok ? (prepared.asIs.ok ? [] : prepared.asIs.problems) : prepared.problems;
      for (const problem of refusals) problems.push(badFigure(project, network, supply, problem));
    }
  }
  const spanOfEdge = new Int32Array(network.edges.length).fill(-1);
  for (const { edgeOfSpan } of supplies) for (const [span, edge] of edgeOfSpan.entries()) spanOfEdge[edge] = span;
  return {
    project,
    survey,
    supplies,
    problems,
    supplyOfNode: found.supplyOfNode.map((index) => indexOf[index] ?? index),
    spanOfEdge,
    normallyOpen: new Set(
      network.edges.flatMap((edge) => (edge.kind === 'switch' && edge.normally === 'open' ? [edge.switchId] : [])),
    ),
  };
}

/** A figure that the solver won't take, with the fence or cable it belongs to. */
function badFigure(
  project: Project,
  network: Network,
  supply: SupplyCircuit,
  { where, message: problem }: CircuitProblem,
): PowerProblem {
  const edge =
    where.kind === 'span'
      ? network.edges[supply.edgeOfSpan[where.index]!]
      : where.kind === 'link'
        ? network.edges[supply.edgeOfLink[where.index]!]
        : undefined;
  const [id, thing]: readonly [string, ThingRef] =
    edge?.kind === 'run'
      ? [edge.lineId, refTo(project.fenceLine.get(edge.lineId) ?? { kind: 'fenceLine' })]
      : edge?.kind === 'crossing'
        ? [edge.gatewayId, refTo(project.gateway.get(edge.gatewayId) ?? { kind: 'gateway' })]
        : edge?.kind === 'leadOut'
          ? [edge.leadOutId, refTo(project.leadOut.get(edge.leadOutId) ?? { kind: 'leadOut' })]
          : [supply.energiser.id, refTo(supply.energiser)];
  return {
    code: 'badFigure',
    weight: 'refused',
    message: message('power.problems.badFigure', { thing, problem }),
    remedy: message('power.problems.badFigureRemedy'),
    source: null,
    thingIds: [id],
  };
}
