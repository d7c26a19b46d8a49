import { kindsIn } from '../kinds/allKinds.ts';
import { keptFor } from '../model/memo.ts';
import { type Project, propertyOf } from '../model/project.ts';
import { buildNetwork } from '../network/buildNetwork.ts';
import { type Feed, feedOf, passesNormally } from '../network/feed.ts';
import { reachOf } from '../network/reach.ts';
import type { Network } from '../network/types.ts';
import { allCrossingFigures } from '../shapes/crossingFigures.ts';
import { lineShapes } from '../shapes/lineShapes.ts';
import { workingPlane } from '../shapes/workingPlane.ts';
import { gatewayShapes } from './gatewayShapes.ts';
import { heightsOf } from './heights/heights.ts';
import { paddocksOf, withNames } from './paddocks.ts';
import { sectionsOf } from './sections.ts';
import { switchRows } from './switchRows.ts';
import { totalsOf } from './totals.ts';
import type { Paddock, Survey } from './types.ts';

export interface Surveyed {
  readonly project: Project;
  readonly survey: Survey;
}

/**
 * Everything that is computed from a drawing. Give it the project before and its survey, and what did not change is
 * taken from there.
 */
export function surveyOf(project: Project, previous?: Surveyed): Survey {
  const property = propertyOf(project);
  const plane = workingPlane(property);
  const lines = lineShapes(project, plane);
  const { network, feed } = networkOf(project, previous);
  const gateways = gatewayShapes(project, plane, network, feed);
  const crossings = allCrossingFigures(project, plane);
  const paddocks = paddocksNow(project, lines, plane, previous);
  const reach = reachOf(project, network, feed);
  const found = sectionsOf(network, reach, lines, property.divide);
  const parts = { plane, lines, gateways, crossings, paddocks, network, reach };
  return {
    ...parts,
    sections: found.sections,
    sectionOfEdge: found.ofEdge,
    switches: switchRows(project, plane, { network, feed, found }),
    totals: totalsOf(parts),
    heights: heightsOf(project, plane, lines),
  };
}

/** The tables that the network is made from. */
const networkKinds = kindsIn('network');

const feedNormally = keptFor((network: Network): Feed => feedOf(network, passesNormally(network)));

function networkOf(project: Project, previous: Surveyed | undefined): { network: Network; feed: Feed } {
  const network = previous && sameNetwork(project, previous.project) ? previous.survey.network : buildNetwork(project);
  return { network, feed: feedNormally(network) };
}

function sameNetwork(project: Project, before: Project): boolean {
  const [now, then] = [propertyOf(project), propertyOf(before)];
  return (
    networkKinds.every((kind) => project[kind] === before[kind]) &&
    workingPlane(now) === workingPlane(then) &&
    now.snapToleranceM === then.snapToleranceM &&
    now.crossings === then.crossings
  );
}

function paddocksNow(
  project: Project,
  lines: Survey['lines'],
  plane: Survey['plane'],
  previous: Surveyed | undefined,
): readonly Paddock[] {
  const { snapToleranceM } = propertyOf(project);
  const names = project.paddock.values();
  if (!previous || previous.survey.plane !== plane) return paddocksOf(lines, names, plane, snapToleranceM);
  const before = previous.survey;
  const sameTolerance = propertyOf(previous.project).snapToleranceM === snapToleranceM;
  if (!sameTolerance || !sameOutlines(lines, before.lines)) {
    return paddocksOf(lines, names, plane, snapToleranceM, before.paddocks);
  }
  return previous.project.paddock === project.paddock ? before.paddocks : withNames(before.paddocks, names, plane);
}

function sameOutlines(lines: Survey['lines'], before: Survey['lines']): boolean {
  if (lines.size !== before.size) return false;
  for (const [id, { xy }] of lines) if (before.get(id)?.xy !== xy) return false;
  return true;
}
