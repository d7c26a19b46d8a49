import { feedInWords } from '../../../core/survey/switchInWords.ts';
import type { SwitchRow } from '../../../core/survey/types.ts';
import { useOpenFile } from '../../state/appState.ts';
import { useFigures } from '../../state/useFigures.ts';
import { Register } from '../parts/Register.tsx';

export function SwitchRegister() {
  const { survey } = useOpenFile();
  const f = useFigures();
  const { divide } = f.words.window;
  const words = divide.switches;
  return (
    <Register<SwitchRow>
      caption={words.caption}
      rows={survey.switches}
      idOf={(row) => row.switch.id}
      empty={words.empty}
      columns={[
        { title: divide.switch, cell: (row) => row.switch.name, sortBy: (row) => row.switch.name },
        { title: divide.place, cell: (row) => f.say(row.where), sortBy: (row) => f.say(row.where) },
        {
          title: words.fed,
          cell: ({ feed }) => (feed.off ? words.off({ fed: feedInWords(feed) }) : f.say(feedInWords(feed))),
          sortBy: ({ feed }) => f.say(feedInWords(feed)),
        },
        {
          title: words.cutsOff,
          figures: true,
          cell: ({ feed, cutsOff }) => {
            if (feed.from === 'bothSides') return words.nothingAlone;
            return feed.from === 'oneSide' ? f.length(cutsOff.lengthM) : words.nothing;
          },
          sortBy: (row) => row.cutsOff.lengthM,
        },
      ]}
    />
  );
}
