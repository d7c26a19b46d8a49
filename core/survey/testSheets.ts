import type { Project } from '../model/project.ts';
import { type ShortestWays, shortestWays, wayTo } from '../network/shortestWays.ts';
import type { Network, NetworkEdge } from '../network/types.ts';
import { nodeInWords } from './nodeInWords.ts';
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
  const place = (node: number, text: string) => ({ text, at: network.nodes[node]!.at, node });
  const entryWords = nodeInWords(project, network, entry);
  const bySwitch = network.edgesAt[entry]!.some((index) => network.edges[index]!.kind === 'switch');
  return [
    place(entry, bySwitch ? `just beyond ${entryWords}` : `at ${entryWords}`),
    ...far.slice(0, mostReadings - 1).map((node) => {
      const words = nodeInWords(project, network, node);
      const atSwitch = network.edgesAt[node]!.some((index) => network.edges[index]!.kind === 'switch');
      return place(node, atSwitch ? `on this side of ${words}` : `at the ${words}`);
    }),
  ];
}

interface ForSteps {
  readonly open: readonly string[];
  /** The switch that leads into the section; undefined where the energiser feeds it without one. */
  readonly into: string | undefined;
  readonly readAt: readonly string[];
}

function stepsFor(project: Project, { letter }: Section, { open, into, readAt }: ForSteps): string[] {
  const nameOf = (id: string): string => project.switch.get(id)?.name ?? id;
  const steps = [
    'Turn the energiser off. Prove the fence dead with a tester before you touch a wire or a switch.',
    open.length > 0 ? `Open ${open.map(nameOf).join(', ')}.` : 'No switch needs opening.',
    ...(into ? [`See that ${nameOf(into)} is closed.`] : []),
    'Keep people and stock away from the fence. Turn the energiser on.',
    ...readAt.map((text) => `Read the voltage ${text}, and write it down.`),
    'Turn the energiser off and prove the fence dead.',
  ];
  if (into) {
    steps.push(
      `If a reading is low: with the energiser off, open ${nameOf(into)}; turn it on and read on the energiser's side of the switch. If that is good, the fault is in section ${letter}.`,
    );
  } else steps.push(`If a reading is low, the fault is in section ${letter} or between it and the energiser.`);
  steps.push('With the energiser off and the fence proved dead, put every switch back as it was.');
  return steps;
}

function unreached({ letter }: Section): TestSheet {
  const steps = [`Nothing feeds section ${letter}, even with every switch closed. Join it to the fence first.`];
  return { section: letter, open: [], closed: [], cutOff: [], live: [], readAt: [], steps };
}
