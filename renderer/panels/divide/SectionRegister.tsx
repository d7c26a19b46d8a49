import { useMemo } from 'react';
import { sectionFeeds } from '../../../core/survey/sectionFeeds.ts';
import type { Section } from '../../../core/survey/types.ts';
import { formatLength } from '../../../core/words/numbers/write.ts';
import { byName } from '../../../core/words/text.ts';
import { sectionMapId } from '../../map/mapTypes.ts';
import { useOpenFile } from '../../state/appState.ts';
import { useUnits } from '../../state/useUnits.ts';
import { Register } from '../parts/Register.tsx';
import { SectionBadge } from '../parts/SectionBadge.tsx';

export function SectionRegister() {
  const { project, survey } = useOpenFile();
  const units = useUnits();
  const feeds = useMemo(() => sectionFeeds(survey), [survey]);
  const fedFrom = ({ letter, fed, holdsEnergiser }: Section): string => {
    if (!fed) return 'not fed';
    const ways = (feeds.get(letter) ?? []).map(({ switchId, from }) => {
      return `${project.switch.get(switchId)?.name ?? switchId}${from === null ? '' : ` from ${from}`}`;
    });
    return [...(holdsEnergiser ? ['the energiser'] : []), ...ways].join(', ');
  };
  return (
    <Register<Section>
      caption="Sections: what stays joined when every switch is open"
      rows={survey.sections}
      idOf={({ letter }) => sectionMapId(letter)}
      empty="No live fence yet, so there is nothing to divide."
      columns={[
        {
          title: 'Section',
          cell: ({ index, letter }) => <SectionBadge index={index} letter={letter} />,
          sortBy: ({ index }) => index,
        },
        {
          title: 'Fence',
          figures: true,
          cell: ({ lengthM, overByM }) => (
            <>
              {formatLength(lengthM, units)}
              {overByM === null ? null : <strong className="over"> over by {formatLength(overByM, units)}</strong>}
            </>
          ),
          sortBy: ({ lengthM }) => lengthM,
        },
        {
          title: 'Gateways',
          figures: true,
          cell: ({ gatewayIds, overByGateways }) => (
            <>
              {gatewayIds.length}
              {overByGateways === null ? null : <strong className="over"> {overByGateways} too many</strong>}
            </>
          ),
          sortBy: ({ gatewayIds }) => gatewayIds.length,
        },
        {
          title: 'Switches',
          cell: ({ switchIds }) => {
            const switches = switchIds.flatMap((id) => project.switch.get(id) ?? []).sort(byName);
            return switches.map(({ name }) => name).join(', ') || 'none';
          },
        },
        { title: 'Fed from', cell: fedFrom, sortBy: fedFrom },
      ]}
    />
  );
}
