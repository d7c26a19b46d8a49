import type { Project } from '../model/project.ts';
import { type ShortestWays, shortestWays, wayTo } from '../network/shortestWays.ts';
import type { Network, SwitchEdge } from '../network/types.ts';
import { nodeInWords } from './nodeInWords.ts';
import type { Section, Survey, TestSheet } from './types.ts';

/** Readings at more places than this would not be walked. */
const mostReadings = 6;

/**
 * One sheet for each section: the way to it is the shortest from an energiser, whatever the switches' normal positions.
 */
export function testSheets(project: Project, survey: Survey): TestSheet[] {
  const { network, sections } = survey;
  const sectionOfNode = new Int32Array(network.nodes.length).fill(-1);
  for (const { index, nodes } of sections) for (const node of nodes) sectionOfNode[node] = index;
  const ways = shortestWays(network);
  return sections.map((section) => testSheet(project, survey, section, sectionOfNode, ways));
}

function testSheet(
  project: Project,
  { network, sections }: Survey,
  section: Section,
  sectionOfNode: Int32Array,
  ways: ShortestWays,
): TestSheet {
  const { distanceM } = ways;
  const entry = section.nodes.reduce((a, b) => (distanceM[b]! < distanceM[a]! ? b : a));
  if (distanceM[entry] === Infinity) return unreached(section);
  const way = wayTo(network, ways, entry);
  const closed = way.flatMap((index) => {
    const edge = network.edges[index]!;
    return edge.kind === 'switch' ? [edge.switchId] : [];
  });
  const crossed = new Set([section.index, ...way.flatMap((index) => sectionsOfEdge(network, sectionOfNode, index))]);
  const live = [...crossed]
    .filter((index) => index >= 0 && index !== section.index)
    .map((index) => sections[index]!)
    .sort((a, b) => nearestM(a, distanceM) - nearestM(b, distanceM));
  const onWay = new Set(closed);
  const border = [...live, section].flatMap(({ switchIds }) => switchIds);
  const open = nearestFirst(
    network,
    distanceM,
    border.filter((id) => !onWay.has(id)),
  );
  const cutOff = nearestFirst(network, distanceM, section.switchIds);
  const readAt = readingPlaces(project, network, section, entry, distanceM);
  const into = closed.at(-1);
  return {
    section: section.letter,
    open,
    closed,
    cutOff,
    live: [...live.map(({ letter }) => letter), section.letter],
    readAt,
    steps: stepsFor(project, section, { open, into, readAt: readAt.map(({ text }) => text) }),
  };
}

function sectionsOfEdge({ edges }: Network, sectionOfNode: Int32Array, index: number): number[] {
  const { from, to } = edges[index]!;
  return [sectionOfNode[from]!, sectionOfNode[to]!];
}

function nearestM({ nodes }: Section, distanceM: Float64Array): number {
  return nodes.reduce((nearest, node) => Math.min(nearest, distanceM[node]!), Infinity);
}

function nearestFirst(network: Network, distanceM: Float64Array, ids: readonly string[]): string[] {
  const farM = (id: string): number => {
    const { from, to } = network.edges[network.edgeOfSwitch.get(id)!] as SwitchEdge;
    return Math.min(distanceM[from]!, distanceM[to]!);
  };
  return [...new Set(ids)].sort((a, b) => farM(a) - farM(b));
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
  const place = (node: number, text: string) => ({ text, at: network.nodes[node]!.at });
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
