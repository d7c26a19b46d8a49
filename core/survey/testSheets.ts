import type { Project } from '../model/project.ts';
import { type ShortestWays, shortestWays, wayTo } from '../network/shortestWays.ts';
import type { Network, NetworkEdge } from '../network/types.ts';
import { type Message, message } from '../words/message.ts';
import { spotAt } from './spotAt.ts';
import type { Section, Survey, TestSheet } from './types.ts';

/** Readings at more places than this would not be walked. */
const mostReadings = 6;

/** What all sheets share. */
interface Ground {
  readonly project: Project;
  readonly survey: Survey;
  readonly ways: ShortestWays;
  /** -1 where no section lies. */
  readonly sectionOfNode: Int32Array;
  /** How far each section, and each switch by id, is from the energiser. */
  readonly sectionM: readonly number[];
  readonly switchM: ReadonlyMap<string, number>;
}

/**
 * One sheet for each section: the way to it is the shortest from an energiser, whatever the switches' normal positions.
 */
export function testSheets(project: Project, survey: Survey): TestSheet[] {
  const ground = groundOf(project, survey);
  return survey.sections.map((section) => testSheet(ground, section));
}

/** The sheet of one section alone: where there are hundreds of sections, all sheets take long. */
export function testSheetOf(project: Project, survey: Survey, section: Section): TestSheet {
  return testSheet(groundOf(project, survey), section);
}

function groundOf(project: Project, survey: Survey): Ground {
  const { network, sections } = survey;
  const ways = shortestWays(network);
  const { distanceM } = ways;
  const sectionOfNode = new Int32Array(network.nodes.length).fill(-1);
  for (const { index, nodes } of sections) for (const node of nodes) sectionOfNode[node] = index;
  const nearestM = (nodes: readonly number[]) =>
    nodes.reduce((least, node) => Math.min(least, distanceM[node]!), Infinity);
  return {
    project,
    survey,
    ways,
    sectionOfNode,
    sectionM: sections.map(({ nodes }) => nearestM(nodes)),
    switchM: new Map(
      [...network.edgeOfSwitch].map(([id, index]) => {
        const { from, to } = network.edges[index]!;
        return [id, nearestM([from, to])];
      }),
    ),
  };
}

function testSheet(ground: Ground, section: Section): TestSheet {
  const { project, survey, ways, sectionM, switchM } = ground;
  const { distanceM } = ways;
  const entry = section.nodes.reduce((a, b) => (distanceM[b]! < distanceM[a]! ? b : a));
  if (distanceM[entry] === Infinity) return unreached(section);
  const way = wayTo(survey.network, ways, entry).map((index) => survey.network.edges[index]!);
  const closed = way.flatMap((edge) => (edge.kind === 'switch' ? [edge.switchId] : []));
  const passed = sectionsPassed(ground, way, section).sort((a, b) => sectionM[a.index]! - sectionM[b.index]!);
  const onWay = new Set(closed);
  const nearestFirst = (ids: Iterable<string>) => [...ids].sort((a, b) => switchM.get(a)! - switchM.get(b)!);
  const border = new Set([...passed, section].flatMap(({ switchIds }) => switchIds.filter((id) => !onWay.has(id))));
  const open = nearestFirst(border);
  const readAt = readingPlaces(project, survey.network, section, entry, distanceM);
  return {
    section: section.letter,
    open,
    closed,
    cutOff: nearestFirst(section.switchIds),
    live: [...passed.map(({ letter }) => letter), section.letter],
    readAt,
    steps: stepsFor(project, section, { open, into: closed.at(-1), readAt: readAt.map(({ text }) => text) }),
  };
}

/** The sections that the way to one leads through, without itself. */
function sectionsPassed({ survey, sectionOfNode }: Ground, way: readonly NetworkEdge[], section: Section): Section[] {
  const passed = new Set(way.flatMap(({ from, to }) => [sectionOfNode[from]!, sectionOfNode[to]!]));
  passed.delete(section.index);
  passed.delete(-1);
  return [...passed].map((index) => survey.sections[index]!);
}

/** Just beyond the way in, then the far ends, the furthest first; where there are none, the furthest place. */
function readingPlaces(
  project: Project,
  network: Network,
  section: Section,
  entry: number,
  distanceM: Float64Array,
): TestSheet['readAt'] {
  const own = new Set(section.edges);
  const furthestFirst = section.nodes.filter((node) => node !== entry).sort((a, b) => distanceM[b]! - distanceM[a]!);
  const ends = furthestFirst.filter((node) => network.edgesAt[node]!.filter((edge) => own.has(edge)).length === 1);
  const far = ends.length > 0 ? ends : furthestFirst.slice(0, 1);
  const hasSwitch = (node: number) => network.edgesAt[node]!.some((index) => network.edges[index]!.kind === 'switch');
  const place = (node: number, text: Message) => ({ text, at: network.nodes[node]!.at, node });
  const spot = (node: number) => ({ spot: spotAt(project, network, node) });
  return [
    place(
      entry,
      hasSwitch(entry)
        ? message('survey.tests.read.beyond', spot(entry))
        : message('survey.tests.read.wayIn', spot(entry)),
    ),
    ...far.slice(0, mostReadings - 1).map((node) => {
      const said = spot(node);
      return place(
        node,
        hasSwitch(node) ? message('survey.tests.read.thisSide', said) : message('survey.tests.read.farEnd', said),
      );
    }),
  ];
}

interface ForSteps {
  readonly open: readonly string[];
  /** The switch that leads into the section; undefined where the energiser feeds it without one. */
  readonly into: string | undefined;
  readonly readAt: readonly Message[];
}

function stepsFor(project: Project, { letter }: Section, { open, into, readAt }: ForSteps): Message[] {
  const nameOf = (id: string): string => project.switch.get(id)?.name ?? id;
  return [
    message('survey.tests.step.begin'),
    open.length > 0
      ? message('survey.tests.step.turnOff', { names: open.map(nameOf) })
      : message('survey.tests.step.nothingOff'),
    ...(into ? [message('survey.tests.step.seeOn', { name: nameOf(into) })] : []),
    message('survey.tests.step.turnOn'),
    ...readAt.map((place) => message('survey.tests.step.read', { place })),
    message('survey.tests.step.dead'),
    into
      ? message('survey.tests.step.lowThrough', { name: nameOf(into), section: letter })
      : message('survey.tests.step.low', { section: letter }),
    message('survey.tests.step.end'),
  ];
}

function unreached({ letter }: Section): TestSheet {
  const steps = [message('survey.tests.step.notReached', { section: letter })];
  return { section: letter, open: [], closed: [], cutOff: [], live: [], readAt: [], steps };
}
