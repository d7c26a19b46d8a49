import type { Xy } from '../../geometry/types.ts';
import type { Project } from '../../model/project.ts';
import { xyAt } from '../../shapes/measuredPath.ts';
import type { Section, Survey } from '../../survey/types.ts';
import { type Message, message } from '../../words/message.ts';
import { recordOf } from '../crossingSource.ts';

/** A piece of a section that is worth looking at first. */
export interface Suspect {
  readonly key: string;
  /** The thing to show on the map. */
  readonly thingId: string;
  readonly name: Message;
  readonly why: Message;
  readonly xy: Xy;
}

interface Ranked extends Suspect {
  /** The smaller, the sooner. */
  readonly rank: number;
}

/** Where to look in a section, the likeliest first; the order is common practice, no source. */
export function suspectsIn(project: Project, survey: Survey, section: Section): Suspect[] {
  const found: Ranked[] = [
    ...crossingSuspects(project, survey, section),
    ...joinSuspects(project, survey, section),
    ...lineSuspects(project, survey, section),
  ];
  return found.sort((p, q) => p.rank - q.rank).map(({ rank: _rank, ...suspect }) => suspect);
}

function crossingSuspects(project: Project, survey: Survey, { gatewayIds }: Section): Ranked[] {
  return gatewayIds.flatMap((id): Ranked[] => {
    const figures = survey.crossings.get(id);
    const shape = survey.gateways.get(id);
    if (!figures || !shape) return [];
    const { crossing, gateway } = figures;
    const record = recordOf(project, crossing.id);
    const joints = record?.jointsUnderground ?? 0;
    const notes = [gateway.note, crossing.note, record?.note ?? '', record?.jointsNote ?? ''].filter(Boolean);
    const all = [
      ...(joints > 0 ? [message('locate.faultSearch.suspect.joints', { count: joints })] : []),
      ...(crossing.sealed === false ? [message('locate.faultSearch.suspect.notSealed')] : []),
      ...(notes.length > 0 ? [noted(notes.join('; '))] : []),
      message(`locate.faultSearch.suspect.${crossing.method}`),
    ];
    const rank =
      joints > 0 ? 0 : crossing.sealed === false ? 1 : notes.length > 0 ? 2 : crossing.method === 'buried' ? 3 : 5;
    return [
      {
        key: `crossing ${id}`,
        thingId: id,
        name: message('locate.faultSearch.suspect.crossing', { gateway: gateway.name }),
        why: message('locate.faultSearch.suspect.several', { all }),
        xy: shape.centre,
        rank,
      },
    ];
  });
}

/** Places where lines are joined, and switches: clamps come loose there. */
function joinSuspects(project: Project, { network, switches }: Survey, { nodes, switchIds }: Section): Ranked[] {
  const joins = nodes.flatMap((node): Ranked[] => {
    const { roles, xy, key } = network.nodes[node]!;
    if (!roles.includes('junction')) return [];
    const lines = [
      ...new Set(
        network.edgesAt[node]!.flatMap((index) => {
          const edge = network.edges[index]!;
          return edge.kind === 'run' ? [edge.lineId] : [];
        }),
      ),
    ];
    if (lines.length < 2) return [];
    const names = lines.map((id) => project.fenceLine.get(id)?.name ?? id);
    return [
      {
        key: `join ${key}`,
        thingId: lines[0]!,
        name: message('locate.faultSearch.suspect.join', { lines: names }),
        why: message('locate.faultSearch.suspect.clamps'),
        xy,
        rank: 4,
      },
    ];
  });
  const atSwitches = switches
    .filter((row) => switchIds.includes(row.switch.id))
    .map((row): Ranked => {
      const why = row.switch.note ? noted(row.switch.note) : message('locate.faultSearch.suspect.switch');
      return {
        key: `switch ${row.switch.id}`,
        thingId: row.switch.id,
        name: message('locate.faultSearch.suspect.named', { name: row.switch.name }),
        why,
        xy: row.xy,
        rank: row.switch.note ? 2 : 6,
      };
    });
  return [...joins, ...atSwitches];
}

/** Lines with a note or heavy growth, and the longest run of each. */
function lineSuspects(project: Project, survey: Survey, section: Section): Ranked[] {
  return section.lineIds.flatMap((id): Ranked[] => {
    const line = project.fenceLine.get(id);
    const shape = survey.lines.get(id);
    const longest = section.edges
      .flatMap((index) => {
        const edge = survey.network.edges[index]!;
        return edge.kind === 'run' && edge.lineId === id ? [edge] : [];
      })
      .toSorted((p, q) => q.lengthM - p.lengthM)[0];
    if (!line || !shape || !longest) return [];
    const heavy = line.growth === 'heavy';
    const why = line.note
      ? noted(line.note)
      : heavy
        ? message('locate.faultSearch.suspect.growth')
        : message('locate.faultSearch.suspect.walk', { lengthM: longest.lengthM });
    const xy = xyAt(shape, (longest.fromM + longest.toM) / 2);
    const name = message('locate.faultSearch.suspect.named', { name: line.name });
    return [{ key: `line ${id}`, thingId: id, name, why, xy, rank: line.note ? 2 : heavy ? 3 : 7 }];
  });
}

function noted(note: string): Message {
  return message('locate.faultSearch.suspect.noted', { note: short(note) });
}

function short(text: string): string {
  const line = text.replace(/\s+/g, ' ').trim();
  return line.length > 120 ? `${line.slice(0, 119)}…` : line;
}
