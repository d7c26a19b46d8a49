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
  readonly title: string;
  readonly places: readonly PlaceToRead[];
}

/** Energisers, switches, gateways of live fences (at the post the supply comes from) and posts. */
export function readingPlaces(project: Project, survey: Survey): PlaceGroup[] {
  const sorted = (places: PlaceToRead[]) => places.sort(byName);
  const groups: PlaceGroup[] = [
    {
      title: 'Energisers',
      places: sorted([...project.energiser.values()].map(({ id, name, at }) => ({ id, name, at }))),
    },
    {
      title: 'Switches',
      places: sorted(survey.switches.map((row) => ({ id: row.switch.id, name: row.switch.name, at: row.at }))),
    },
    {
      title: 'Gateways',
      places: sorted(
        [...survey.gateways.values()].flatMap(({ gateway, lineLive, supplyFrom, startPostAt, endPostAt }) =>
          lineLive ? [{ id: gateway.id, name: gateway.name, at: supplyFrom === 'end' ? endPostAt : startPostAt }] : [],
        ),
      ),
    },
    { title: 'Posts', places: sorted([...project.post.values()].map(({ id, name, at }) => ({ id, name, at }))) },
  ];
  return groups.filter(({ places }) => places.length > 0);
}
