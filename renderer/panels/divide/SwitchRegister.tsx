import { feedInWords } from '../../../core/survey/switchInWords.ts';
import type { SwitchRow } from '../../../core/survey/types.ts';
import { formatLength } from '../../../core/words/numbers/write.ts';
import { useOpenFile } from '../../state/appState.ts';
import { useUnits } from '../../state/useUnits.ts';
import { Register } from '../parts/Register.tsx';

export function SwitchRegister() {
  const { survey } = useOpenFile();
  const units = useUnits();
  return (
    <Register<SwitchRow>
      caption="Cut-out switches"
      rows={survey.switches}
      idOf={(row) => row.switch.id}
      empty="No switches yet. Take the plan above, or press S on the map."
      columns={[
        { title: 'Switch', cell: (row) => row.switch.name, sortBy: (row) => row.switch.name },
        { title: 'Place', cell: (row) => row.placeText, sortBy: (row) => row.placeText },
        {
          title: 'Fed',
          cell: ({ feed }) => `${feedInWords(feed)}${feed.off ? ', off' : ''}`,
          sortBy: ({ feed }) => feedInWords(feed),
        },
        {
          title: 'Cuts off',
          figures: true,
          cell: ({ feed, cutsOff }) => {
            if (feed.from === 'bothSides') return 'nothing alone';
            return feed.from === 'oneSide' ? formatLength(cutsOff.lengthM, units) : 'nothing';
          },
          sortBy: (row) => row.cutsOff.lengthM,
        },
      ]}
    />
  );
}
