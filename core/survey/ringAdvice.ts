import { feedingWays } from '../network/sectioning/normallyOpen.ts';
import type { Survey } from './types.ts';

/** Switches are in the order of the register: by name. */
export interface RingAdvice {
  /** Switches that part two sections which would stay fed with them open. */
  readonly ringSwitchIds: readonly string[];
  /** Those to stand open so that every section is fed one way, the shortest; the others in rings stand closed. */
  readonly openIds: readonly string[];
  /** They stand that way now. */
  readonly settled: boolean;
}

/** Which switches of the rings should normally stand open; null where no section is fed from two sides. */
export function ringAdvice({ sections, switches, network }: Survey): RingAdvice | null {
  const ringSwitchIds = switches.filter(({ feed }) => feed.from === 'bothSides').map((row) => row.switch.id);
  const [source] = sections.filter(({ fed, holdsEnergiser }) => holdsEnergiser || fed);
  if (ringSwitchIds.length === 0 || !source) return null;
  const sides = new Map<string, string[]>();
  for (const { letter, switchIds } of sections)
    for (const id of switchIds) sides.set(id, [...(sides.get(id) ?? []), letter]);
  const between = switches.flatMap(({ switch: { id } }) => {
    const [a, b] = sides.get(id) ?? [];
    return a === undefined || b === undefined ? [] : [{ id, a, b }];
  });
  const parts = sections.map(({ letter, lengthM }) => ({ id: letter, lengthM }));
  const toOpen = new Set(feedingWays(parts, between, source.letter).normallyOpen);
  const openIds = switches.map((row) => row.switch.id).filter((id) => toOpen.has(id));
  const standsOpen = (id: string): boolean => {
    const edge = network.edges[network.edgeOfSwitch.get(id) ?? -1];
    return edge?.kind === 'switch' && edge.normally === 'open';
  };
  const involved = new Set([...ringSwitchIds, ...openIds]);
  return { ringSwitchIds, openIds, settled: [...involved].every((id) => standsOpen(id) === openIds.includes(id)) };
}
