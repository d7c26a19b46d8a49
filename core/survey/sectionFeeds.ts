import type { Survey, SwitchFeed } from './types.ts';

/** A switch through which current comes into a section, and the section it comes from. */
export interface SectionFeed {
  readonly switchId: string;
  /** Letter; null: straight from the energiser's lead-out. */
  readonly from: string | null;
}

/**
 * Which way each section is fed with every switch as it normally stands, by letter. A section in a ring is fed through
 * each switch beyond which current still comes when the section itself is taken away.
 */
export function sectionFeeds({ sections, network, switches }: Survey): ReadonlyMap<string, readonly SectionFeed[]> {
  const sides = new Map<string, string[]>();
  for (const { letter, switchIds } of sections) {
    for (const id of switchIds) sides.set(id, [...(sides.get(id) ?? []), letter]);
  }
  const isClosed = (id: string): boolean => {
    const edge = network.edges[network.edgeOfSwitch.get(id) ?? -1];
    return edge?.kind === 'switch' && edge.normally === 'closed';
  };
  const neighbours = new Map<string, { readonly switchId: string; readonly letter: string }[]>();
  for (const { letter } of sections) neighbours.set(letter, []);
  for (const [switchId, [a, b]] of sides) {
    if (a === undefined || b === undefined || !isClosed(switchId)) continue;
    neighbours.get(a)!.push({ switchId, letter: b });
    neighbours.get(b)!.push({ switchId, letter: a });
  }
  const rows = new Map(switches.map((row) => [row.switch.id, row]));
  /** Sections that current comes into without any other section before them. */
  const first = sections.filter(({ letter, holdsEnergiser, fed, switchIds }) => {
    return holdsEnergiser || (fed && switchIds.some((id) => isFromLeadOut(id, letter)));
  });
  function isFromLeadOut(id: string, letter: string): boolean {
    const feed = rows.get(id)?.feed;
    if (sides.get(id)?.length !== 1 || !feed || feed.off) return false;
    // Where a second energiser feeds the section too, the cable has current of its own and so has the section.
    return feed.from === 'bothSides' ? standsAtLeadOut(id) : feedsInto(feed) === letter;
  }
  function standsAtLeadOut(id: string): boolean {
    const { from } = network.edges[network.edgeOfSwitch.get(id)!]!;
    return network.edgesAt[from]!.some((index) => network.edges[index]!.kind === 'leadOut');
  }
  const reachedWithout = (taken: string): Set<string> => {
    const reached = new Set(first.map(({ letter }) => letter).filter((letter) => letter !== taken));
    for (const letter of reached) {
      for (const next of neighbours.get(letter)!) if (next.letter !== taken) reached.add(next.letter);
    }
    return reached;
  };
  return new Map(
    sections.map(({ letter, fed, switchIds }) => {
      if (!fed) return [letter, []];
      const direct = switchIds.filter((id) => isFromLeadOut(id, letter)).map((switchId) => ({ switchId, from: null }));
      const border = neighbours.get(letter)!;
      const inRing = border.some(({ switchId }) => rows.get(switchId)?.feed.from === 'bothSides');
      const reached = inRing ? reachedWithout(letter) : null;
      const through = border.filter(({ switchId, letter: other }) => {
        return reached ? reached.has(other) : feedsInto(rows.get(switchId)?.feed) === letter;
      });
      return [letter, [...direct, ...through.map(({ switchId, letter: from }) => ({ switchId, from }))]];
    }),
  );
}

/** The section that has its current through this switch and no other way. */
function feedsInto(feed: SwitchFeed | undefined): string | null {
  return feed?.from === 'oneSide' && !feed.off ? feed.far : null;
}
