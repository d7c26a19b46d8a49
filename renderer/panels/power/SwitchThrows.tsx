import type { SwitchThrow } from '../../../core/survey/power/switchTable.ts';
import { useApp } from '../../state/appState.ts';
import { useFigures } from '../../state/useFigures.ts';
import { Register } from '../parts/Register.tsx';
import { WorkedOut } from '../parts/WorkedOut.tsx';
import { thrown } from './ShowChoice.tsx';
import { usePower } from './usePower.ts';

const none: readonly SwitchThrow[] = [];

/** What each switch turns off or on, the others standing as they normally do. */
export function SwitchThrows() {
  const { power } = usePower();
  const f = useFigures();
  const words = f.words.window.power.switches;
  const tables = useApp((state) => state.analysis?.powerTables);
  return (
    <WorkedOut part="power" what={words.what}>
      <Register<SwitchThrow>
        caption={words.caption}
        rows={tables?.switches ?? none}
        idOf={({ switchId }) => switchId}
        empty={words.empty}
        columns={[
          {
            title: words.switch,
            cell: ({ name, action }) => (action === 'open' ? words.turnedOff({ name }) : words.turnedOn({ name })),
            sortBy: ({ name }) => name,
          },
          {
            title: words.fence,
            figures: true,
            cell: ({ fed, lengthM, action }) => {
              if (fed === 'bothSides') return action === 'open' ? words.noneDead : words.noneAlive;
              if (fed !== 'oneSide') return words.notFed;
              return action === 'open' ? words.goesDead({ lengthM }) : words.comesAlive({ lengthM });
            },
            sortBy: ({ lengthM }) => lengthM,
          },
          {
            title: words.weakestThen,
            figures: true,
            cell: ({ weakest }) => (weakest ? f.volts(weakest.volts) : words.allDead),
            sortBy: ({ weakest }) => weakest?.volts ?? 0,
          },
          {
            title: words.showIt,
            cell: ({ switchId, name, action }) => (
              <button
                type="button"
                aria-label={action === 'open' ? words.showWithOff({ name }) : words.showWithOn({ name })}
                onClick={() => useApp.setState({ shownOpen: thrown(switchId, power.normallyOpen) })}
              >
                {words.show}
              </button>
            ),
          },
        ]}
      />
    </WorkedOut>
  );
}
