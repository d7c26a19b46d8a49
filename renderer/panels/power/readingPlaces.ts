import type { Project } from '../../../core/model/project.ts';
import type { LonLat } from '../../../core/model/things.ts';
import type { Survey } from '../../../core/survey/types.ts';
import { byName } from '../../../core/words/text.ts';

/** A thing that a tester can be held to. */
export interface PlaceToRead {
  readonly id: string;
  readonly name: string;
  readonly at: LonLat;
}

export interface PlaceGroup {
  readonly of: 'energisers' | 'switches' | 'gateways' | 'posts';
  readonly places: readonly PlaceToRead[];
}

/** Energisers, switches, gateways of live fences (at the post the supply comes from) and posts. */
export function readingPlaces(project: Project, survey: Survey): PlaceGroup[] {
  const sorted = (places: PlaceToRead[]) => places.sort(byName);
  const groups: PlaceGroup[] = [
    {
      of: 'energisers',
      places: sorted([...project.energiser.values()].map(({ id, name, at }) => ({ id, name, at }))),
    },
    {
      of: 'switches',
      places: sorted(survey.switches.map((row) => ({ id: row.switch.id, name: row.switch.name, at: row.at }))),
    },
    {
      of: 'gateways',
      places: sorted(
        [...survey.gateways.values()].flatMap(({ gateway, lineLive, supplyFrom, startPostAt, endPostAt }) =>
          lineLive ? [{ id: gateway.id, name: gateway.name, at: supplyFrom === 'end' ? endPostAt : startPostAt }] : [],
        ),
      ),
    },
    { of: 'posts', places: sorted([...project.post.values()].map(({ id, name, at }) => ({ id, name, at }))) },
  ];
  return groups.filter(({ places }) => places.length > 0);
}
