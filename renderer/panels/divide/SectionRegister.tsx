import { useMemo } from 'react';
import { sectionFeeds } from '../../../core/survey/sectionFeeds.ts';
import type { Section } from '../../../core/survey/types.ts';
import { byName } from '../../../core/words/text.ts';
import { sectionMapId } from '../../map/mapTypes.ts';
import { useOpenFile } from '../../state/appState.ts';
import { useFigures } from '../../state/useFigures.ts';
import { Register } from '../parts/Register.tsx';
import { SectionBadge } from '../parts/SectionBadge.tsx';

export function SectionRegister() {
  const { project, survey } = useOpenFile();
  const f = useFigures();
  const { divide } = f.words.window;
  const { sections: words } = divide;
  const feeds = useMemo(() => sectionFeeds(survey), [survey]);
  const fedFrom = ({ letter, fed, holdsEnergiser }: Section): string => {
    if (!fed) return words.notFed;
    const through = (feeds.get(letter) ?? []).map(({ switchId, from }) => {
      return { name: project.switch.get(switchId)?.name ?? switchId, from };
    });
    return words.ways({ energiser: holdsEnergiser, through });
  };
  return (
    <Register<Section>
      caption={words.caption}
      rows={survey.sections}
      idOf={({ letter }) => sectionMapId(letter)}
      empty={words.empty}
      columns={[
        {
          title: divide.section,
          cell: ({ index, letter }) => <SectionBadge index={index} letter={letter} />,
          sortBy: ({ index }) => index,
        },
        {
          title: words.fence,
          figures: true,
          cell: ({ lengthM, overByM }) => (
            <>
              {f.length(lengthM)}
              {overByM === null ? null : <strong className="over"> {words.over({ lengthM: overByM })}</strong>}
            </>
          ),
          sortBy: ({ lengthM }) => lengthM,
        },
        {
          title: words.gateways,
          figures: true,
          cell: ({ gatewayIds, overByGateways }) => (
            <>
              {gatewayIds.length}
              {overByGateways === null ? null : (
                <strong className="over"> {words.tooMany({ count: overByGateways })}</strong>
              )}
            </>
          ),
          sortBy: ({ gatewayIds }) => gatewayIds.length,
        },
        {
          title: divide.register.switches,
          cell: ({ switchIds }) => {
            const switches = switchIds.flatMap((id) => project.switch.get(id) ?? []).sort(byName);
            return switches.map(({ name }) => name).join(', ') || divide.none;
          },
        },
        { title: words.fedFrom, cell: fedFrom, sortBy: fedFrom },
      ]}
    />
  );
}
