import { propertyOf } from '../../../core/model/project.ts';
import { energisersNeeded } from '../../../core/survey/power/energiserNeeded.ts';
import { estimateOf } from '../../../core/survey/power/estimateOf.ts';
import type { ImprovementsFound } from '../../../core/survey/power/improvements.ts';
import { useApp, useOpenFile } from '../../state/appState.ts';
import { light } from '../../state/choose.ts';
import { useFigures, useWords } from '../../state/useFigures.ts';
import { WorkedOut } from '../parts/WorkedOut.tsx';
import { usePower } from './usePower.ts';

/** What could be done for the weakest place, each by itself, the best first. */
export function ImprovementsView() {
  const found = useApp((state) => state.analysis?.powerTables?.improvements ?? null);
  const words = useWords().window.power.improvements;
  return (
    <WorkedOut part="power" what={words.what}>
      {found ? <Improvements {...found} /> : <p className="register-empty">{words.none}</p>}
    </WorkedOut>
  );
}

function Improvements({ farEnd, improvements }: ImprovementsFound) {
  const { project } = useOpenFile();
  const { power } = usePower();
  const f = useFigures();
  const estimateWords = f.words.window.power;
  const words = estimateWords.improvements;
  const { stockMinimumV } = propertyOf(project).power;
  const needed = energisersNeeded(power, estimateOf(power)).filter(({ margin }) => margin < 1);
  return (
    <section className="block" aria-label={estimateWords.register.improvements}>
      <div className="register">
        <table>
          <caption>{words.caption({ volts: farEnd.volts, spot: farEnd.spot })}</caption>
          <thead>
            <tr>
              <th scope="col">{words.ifThereWere}</th>
              <th scope="col" className="amount">
                {words.there}
              </th>
              <th scope="col" className="amount">
                {words.gain}
              </th>
              <th scope="col" className="amount">
                {words.weakestThen}
              </th>
            </tr>
          </thead>
          <tbody>
            {improvements.map(({ key, name, farEndV, gainV, weakest, thingIds }) => (
              <tr key={key} onPointerEnter={() => light(thingIds)} onPointerLeave={() => light([])}>
                <th scope="row" className="improvement-name">
                  {f.say(name)}
                </th>
                <td className="amount">{f.volts(farEndV)}</td>
                <td className="amount">{estimateWords.gain({ volts: gainV })}</td>
                <td className="amount">{weakest ? f.volts(weakest.volts) : words.noneLive}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
      {needed.map(({ energiserId, openCircuitV, into500OhmV }) => (
        <p key={energiserId}>
          {words.needed({
            name: project.energiser.get(energiserId)?.name ?? energiserId,
            openCircuitV,
            into500OhmV,
            leastV: stockMinimumV,
          })}
        </p>
      ))}
      <p className="field-hint">{words.moreWires}</p>
    </section>
  );
}
