import { useMemo, useState } from 'react';
import { propertyOf } from '../../../core/model/project.ts';
import { type Profile, type ProfilePoint, profileTo } from '../../../core/survey/power/profile.ts';
import { formatLength, formatVoltage } from '../../../core/words/numbers/write.ts';
import { useUnits } from '../../state/useUnits.ts';
import { ProfilePlot } from './ProfilePlot.tsx';
import { usePower } from './usePower.ts';

/** The voltage on the way from the energiser to the weakest place. */
export function ProfileView() {
  const { power, estimate, switches } = usePower();
  const units = useUnits();
  const { weakest } = estimate;
  const profile = useMemo(() => weakest && profileTo(power, estimate, weakest), [power, estimate, weakest]);
  const [at, setAt] = useState(1);
  if (!weakest || !profile) return <p className="register-empty">No fence is live, so there is no way to show.</p>;
  const leastV = propertyOf(power.project).power.stockMinimumV;
  const here = pointAt(profile, at * profile.lengthM);
  const title = `From the energiser to the weakest place, ${weakest.text}${switches === '' ? '' : `, ${switches}`}`;
  return (
    <section className="block" aria-label="Profile">
      <h2>{title}</h2>
      <ProfilePlot profile={profile} minimumV={leastV} here={here} />
      <div className="field">
        <label htmlFor="profile-place">Read along the way</label>
        <input
          id="profile-place"
          type="range"
          min={0}
          max={1000}
          value={Math.round(at * 1000)}
          aria-valuetext={`${formatLength(here.distanceM, units)} from the energiser: about ${formatVoltage(here.volts)}`}
          onChange={(event) => setAt(Number(event.target.value) / 1000)}
        />
        <output htmlFor="profile-place">
          {formatLength(here.distanceM, units)} from the energiser: about <strong>{formatVoltage(here.volts)}</strong>
          {here.volts < leastV ? ', too low' : ''}
        </output>
      </div>
      <ProfileTable profile={profile} end={weakest.text} />
    </section>
  );
}

function ProfileTable({ profile, end }: { readonly profile: Profile; readonly end: string }) {
  const units = useUnits();
  const last = profile.points.at(-1)!;
  const rows = [
    { ...profile.points[0]!, name: 'the energiser' },
    ...profile.marks,
    { ...last, name: `the weakest place, ${end}` },
  ];
  return (
    <details className="legs">
      <summary>The same as a table</summary>
      <table>
        <thead>
          <tr>
            <th scope="col">Place</th>
            <th scope="col" className="amount">
              Along the way
            </th>
            <th scope="col" className="amount">
              Estimate
            </th>
          </tr>
        </thead>
        <tbody>
          {rows.map(({ name, distanceM, volts }, index) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: a way passes its places in order
            <tr key={index}>
              <td>{name}</td>
              <td className="amount">{formatLength(distanceM, units)}</td>
              <td className="amount">{formatVoltage(volts)}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </details>
  );
}

/** The profile at a distance, straight between its points. */
function pointAt({ points }: Profile, distanceM: number): ProfilePoint {
  const next = points.findIndex((point) => point.distanceM >= distanceM);
  const b = points[next === -1 ? points.length - 1 : next]!;
  const a = points[Math.max(0, next - 1)] ?? b;
  const spanM = b.distanceM - a.distanceM;
  const share = spanM > 0 ? (distanceM - a.distanceM) / spanM : 1;
  return { distanceM, volts: a.volts + share * (b.volts - a.volts) };
}
