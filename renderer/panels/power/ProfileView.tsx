import { useMemo, useState } from 'react';
import { propertyOf } from '../../../core/model/project.ts';
import { type Profile, type ProfilePoint, profileTo } from '../../../core/survey/power/profile.ts';
import type { Spot } from '../../../core/words/en/survey/spots.ts';
import { useFigures, useWords } from '../../state/useFigures.ts';
import { ProfilePlot } from './ProfilePlot.tsx';
import { usePower } from './usePower.ts';

/** The voltage on the way from the energiser to the weakest place. */
export function ProfileView() {
  const { power, estimate, stood } = usePower();
  const { profile: words, register } = useWords().window.power;
  const { weakest } = estimate;
  const profile = useMemo(() => weakest && profileTo(power, estimate, weakest), [power, estimate, weakest]);
  const [at, setAt] = useState(1);
  if (!weakest || !profile) return <p className="register-empty">{words.none}</p>;
  const leastV = propertyOf(power.project).power.stockMinimumV;
  const here = pointAt(profile, at * profile.lengthM);
  const read = { distanceM: here.distanceM, volts: here.volts };
  const said = here.volts < leastV ? words.hereTooLow(read) : words.here(read);
  return (
    <section className="block" aria-label={register.profile}>
      <h2>{words.title({ spot: weakest.spot, stood })}</h2>
      <ProfilePlot profile={profile} minimumV={leastV} here={here} />
      <div className="field">
        <label htmlFor="profile-place">{words.readAlong}</label>
        <input
          id="profile-place"
          type="range"
          min={0}
          max={1000}
          value={Math.round(at * 1000)}
          aria-valuetext={said}
          onChange={(event) => setAt(Number(event.target.value) / 1000)}
        />
        <output htmlFor="profile-place">{said}</output>
      </div>
      <ProfileTable profile={profile} end={weakest.spot} />
    </section>
  );
}

function ProfileTable({ profile, end }: { readonly profile: Profile; readonly end: Spot }) {
  const f = useFigures();
  const words = f.words.window.power.profile;
  const last = profile.points.at(-1)!;
  const rows = [
    { ...profile.points[0]!, name: words.energiser },
    ...profile.marks,
    { ...last, name: words.weakest({ spot: end }) },
  ];
  return (
    <details className="legs">
      <summary>{words.table}</summary>
      <table>
        <thead>
          <tr>
            <th scope="col">{words.place}</th>
            <th scope="col" className="amount">
              {words.along}
            </th>
            <th scope="col" className="amount">
              {words.estimate}
            </th>
          </tr>
        </thead>
        <tbody>
          {rows.map(({ name, distanceM, volts }, index) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: a way passes its places in order
            <tr key={index}>
              <td>{name}</td>
              <td className="amount">{f.length(distanceM)}</td>
              <td className="amount">{f.volts(volts)}</td>
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
