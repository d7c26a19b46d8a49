import type { SwitchThrow } from '../../../core/survey/power/switchTable.ts';
import { formatLength, formatVoltage } from '../../../core/words/numbers/write.ts';
import { useApp } from '../../state/appState.ts';
import { useUnits } from '../../state/useUnits.ts';
import { Register } from '../parts/Register.tsx';
import { WorkedOut } from '../parts/WorkedOut.tsx';
import { thrown } from './ShowChoice.tsx';
import { usePower } from './usePower.ts';

const none: readonly SwitchThrow[] = [];

/** What each switch turns off or on, the others standing as they normally do. */
export function SwitchThrows() {
  const { power } = usePower();
  const units = useUnits();
  const tables = useApp((state) => state.analysis?.powerTables);
  return (
    <WorkedOut part="power" what="what each switch turns off">
      <Register<SwitchThrow>
        caption="What each switch turns off or on, the others as they normally stand"
        rows={tables?.switches ?? none}
        idOf={({ switchId }) => switchId}
        empty="No cut-out switch stands on a fence that an energiser feeds."
        columns={[
          {
            title: 'Switch',
            cell: ({ name, action }) => `${name} ${action === 'open' ? 'opened' : 'closed'}`,
            sortBy: ({ name }) => name,
          },
          {
            title: 'Fence',
            figures: true,
            cell: ({ fed, lengthM, action }) => {
              if (fed === 'bothSides')
                return action === 'open' ? 'none dead (fed from both sides)' : 'none (live on both sides)';
              if (fed !== 'oneSide') return 'none (not fed)';
              return `${formatLength(lengthM, units)} ${action === 'open' ? 'dead' : 'alive'}`;
            },
            sortBy: ({ lengthM }) => lengthM,
          },
          {
            title: 'Weakest then',
            figures: true,
            cell: ({ weakest }) => (weakest ? formatVoltage(weakest.volts) : 'all dead'),
            sortBy: ({ weakest }) => weakest?.volts ?? 0,
          },
          {
            title: 'Show it',
            cell: ({ switchId, name }) => (
              <button
                type="button"
                aria-label={`Show it with ${name} thrown`}
                onClick={() => useApp.setState({ shownOpen: thrown(switchId, power.normallyOpen) })}
              >
                Show
              </button>
            ),
          },
        ]}
      />
    </WorkedOut>
  );
}
