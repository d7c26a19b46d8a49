import { propertyOf } from '../../../core/model/project.ts';
import { energisersNeeded } from '../../../core/survey/power/energiserNeeded.ts';
import { estimateOf } from '../../../core/survey/power/estimateOf.ts';
import type { ImprovementsFound } from '../../../core/survey/power/improvements.ts';
import { formatVoltage } from '../../../core/words/numbers/write.ts';
import { useApp, useOpenFile } from '../../state/appState.ts';
import { light } from '../../state/choose.ts';
import { WorkedOut } from '../parts/WorkedOut.tsx';
import { usePower } from './usePower.ts';
import { gainInWords } from './volts.ts';

/** What could be done for the weakest place, each by itself, the best first. */
export function ImprovementsView() {
  const found = useApp((state) => state.analysis?.powerTables?.improvements ?? null);
  return (
    <WorkedOut part="power" what="what would raise the voltage">
      {found ? (
        <Improvements {...found} />
      ) : (
        <p className="register-empty">No fence is live, so there is no voltage.</p>
      )}
    </WorkedOut>
  );
}

function Improvements({ farEnd, improvements }: ImprovementsFound) {
  const { project } = useOpenFile();
  const { power } = usePower();
  const { stockMinimumV } = propertyOf(project).power;
  const needed = energisersNeeded(power, estimateOf(power)).filter(({ margin }) => margin < 1);
  return (
    <section className="block" aria-label="What would raise the voltage">
      <div className="register">
        <table>
          <caption>
            What each would do by itself at the place that is weakest now: {formatVoltage(farEnd.volts)} {farEnd.text}.
            Estimates; switches as they normally stand.
          </caption>
          <thead>
            <tr>
              <th scope="col">If there were</th>
              <th scope="col" className="amount">
                There
              </th>
              <th scope="col" className="amount">
                Gain
              </th>
              <th scope="col" className="amount">
                Weakest then
              </th>
            </tr>
          </thead>
          <tbody>
            {improvements.map(({ key, name, farEndV, gainV, weakest, thingIds }) => (
              <tr key={key} onPointerEnter={() => light(thingIds)} onPointerLeave={() => light([])}>
                <th scope="row" className="improvement-name">
                  {name}
                </th>
                <td className="amount">{formatVoltage(farEndV)}</td>
                <td className="amount">{gainInWords(gainV)}</td>
                <td className="amount">{weakest ? formatVoltage(weakest.volts) : 'none live'}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
      {needed.map(({ energiserId, openCircuitV, into500OhmV }) => (
        <p key={energiserId}>
          With nothing else changed, the fence of {project.energiser.get(energiserId)?.name} would need an energiser of
          about {formatVoltage(openCircuitV)} open circuit and {formatVoltage(into500OhmV)} into 500 ohm to hold{' '}
          {formatVoltage(stockMinimumV)} everywhere. Clear the growth first: it is nearly always cheaper.
        </p>
      ))}
      <p className="field-hint">
        One more live wire carries more and leaks more: on a fence with growth it can cost voltage.
      </p>
    </section>
  );
}
