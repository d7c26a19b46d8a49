import { useRef } from 'react';
import { leastOf } from '../../../core/model/extremes.ts';
import type { Profile, ProfileMark, ProfilePoint } from '../../../core/survey/power/profile.ts';
import { farUnit, lengthUnit } from '../../../core/words/numbers/units.ts';
import { fixed } from '../../../core/words/numbers/write.ts';
import { useFigures } from '../../state/useFigures.ts';
import { axisTicks } from './axisTicks.ts';
import { useWidthPx } from './useWidthPx.ts';

const heightPx = 300;
const margin = { left: 46, right: 14, top: 48, bottom: 48 };
/** Names of places stand in two rows at the top, this much apart. */
const namePx = { perLetter: 9, between: 8, row: 18 };

/** Voltage over distance: one line, the stock's minimum across it, the gateways and switches passed. */
export function ProfilePlot({
  profile,
  minimumV,
  here,
}: {
  readonly profile: Profile;
  readonly minimumV: number;
  readonly here: ProfilePoint;
}) {
  const f = useFigures();
  const words = f.words.window.power.profile;
  const frame = useRef<HTMLElement>(null);
  const widthPx = useWidthPx(frame, 380);
  const { points, marks, lengthM } = profile;
  const [first, last] = [points[0]!, points.at(-1)!];
  const [unit, unitM] = distanceUnit(lengthM, f.units);
  const xTicks = axisTicks(lengthM / unitM, 5);
  const yTicks = axisTicks(Math.max(first.volts, minimumV) / 1000, 5);
  const mostX = Math.max(lengthM / unitM, 1e-9);
  const mostY = yTicks.at(-1)!;
  const innerPx = widthPx - margin.left - margin.right;
  const x = (distanceM: number) => margin.left + (distanceM / unitM / mostX) * innerPx;
  const y = (volts: number) =>
    heightPx - margin.bottom - (volts / 1000 / mostY) * (heightPx - margin.top - margin.bottom);
  const path = points.map(
    ({ distanceM, volts }, i) => `${i === 0 ? 'M' : 'L'}${x(distanceM).toFixed(1)} ${y(volts).toFixed(1)}`,
  );
  const low = points.map(({ distanceM, volts }, i) => {
    const isLow = Math.min(volts, points[i - 1]?.volts ?? volts) < minimumV;
    return `${isLow && i > 0 ? 'L' : 'M'}${x(distanceM).toFixed(1)} ${y(volts).toFixed(1)}`;
  });
  const isLowSomewhere = points.some(({ volts }) => volts < minimumV);
  const minimumText = words.holds({ volts: minimumV });
  const minimumAt = freePlace(
    points.map(({ distanceM, volts }) => [x(distanceM), y(volts)]),
    minimumText.length * namePx.perLetter,
    [margin.left + 6, widthPx - margin.right],
    [y(minimumV) - 8, y(minimumV) + 18],
  );
  const label = words.plot({ lengthM, firstV: first.volts, lastV: last.volts, leastV: minimumV });
  return (
    <figure ref={frame} className="profile">
      <svg width={widthPx} height={heightPx} viewBox={`0 0 ${widthPx} ${heightPx}`} role="img" aria-label={label}>
        <g className="profile-grid">
          {yTicks.map((tick) => (
            <line key={tick} x1={margin.left} x2={widthPx - margin.right} y1={y(tick * 1000)} y2={y(tick * 1000)} />
          ))}
        </g>
        <g className="profile-axis">
          <line x1={margin.left} x2={margin.left} y1={margin.top} y2={heightPx - margin.bottom} />
          <line x1={margin.left} x2={widthPx - margin.right} y1={y(0)} y2={y(0)} />
          {yTicks.map((tick) => (
            <text key={tick} x={margin.left - 6} y={y(tick * 1000) + 5} textAnchor="end">
              {trimmed(tick)}
            </text>
          ))}
          {xTicks
            .filter((tick) => tick <= mostX * 1.0001)
            .map((tick) => (
              <g key={tick}>
                <line x1={x(tick * unitM)} x2={x(tick * unitM)} y1={y(0)} y2={y(0) + 5} />
                <text x={x(tick * unitM)} y={y(0) + 20} textAnchor="middle">
                  {trimmed(tick)}
                </text>
              </g>
            ))}
          <text x={margin.left + innerPx / 2} y={heightPx - 6} textAnchor="middle">
            {words.axis({ unit })}
          </text>
          <text x={4} y={margin.top - 32}>
            kV
          </text>
        </g>
        <Passed marks={namedMarks(marks, x)} x={x} y={y} widthPx={widthPx} />
        <line
          className="profile-minimum"
          x1={margin.left}
          x2={widthPx - margin.right}
          y1={y(minimumV)}
          y2={y(minimumV)}
        />
        <text className="profile-minimum-text" {...minimumAt}>
          {minimumText}
        </text>
        <path className="profile-line" d={path.join('')} />
        {isLowSomewhere ? <path className="profile-low" d={low.join('')} /> : null}
        <line className="profile-here" x1={x(here.distanceM)} x2={x(here.distanceM)} y1={margin.top} y2={y(0)} />
        <circle className="profile-end" cx={x(here.distanceM)} cy={y(here.volts)} r={6} />
        <text className="profile-value" x={margin.left + 6} y={y(first.volts) - 8}>
          {f.volts(first.volts)}
        </text>
        <text className="profile-value" x={widthPx - margin.right} y={y(last.volts) - 10} textAnchor="end">
          {f.volts(last.volts)}
        </text>
      </svg>
    </figure>
  );
}

/** Of the corners where a text could stand, at its left or its right edge, the one that the line keeps furthest from. */
function freePlace(
  line: readonly (readonly [x: number, y: number])[],
  textPx: number,
  [left, right]: readonly [number, number],
  baselines: readonly number[],
): { readonly x: number; readonly y: number; readonly textAnchor: 'start' | 'end' } {
  const places = baselines.flatMap((y) => [
    { x: left, y, textAnchor: 'start' as const, from: left, to: left + textPx },
    { x: right, y, textAnchor: 'end' as const, from: right - textPx, to: right },
  ]);
  const room = ({ y, from, to }: (typeof places)[number]): number =>
    leastOf(line.flatMap(([px, py]) => (px >= from && px <= to ? [Math.abs(py - (y - 5))] : [])));
  const { x, y, textAnchor } = places.reduce((best, place) => (room(place) > room(best) ? place : best));
  return { x, y, textAnchor };
}

interface NamedMark extends ProfileMark {
  /** Row of its name, or null where there is no room for one. */
  readonly row: 0 | 1 | null;
}

function Passed({
  marks,
  x,
  y,
  widthPx,
}: {
  readonly marks: readonly NamedMark[];
  readonly x: (distanceM: number) => number;
  readonly y: (volts: number) => number;
  readonly widthPx: number;
}) {
  return (
    <g className="profile-marks">
      {marks.map(({ thingId, name, distanceM, volts, row }) => (
        <g key={thingId}>
          <line x1={x(distanceM)} x2={x(distanceM)} y1={row === null ? y(volts) - 8 : margin.top - 4} y2={y(volts)} />
          {row === null ? null : (
            <text x={Math.min(x(distanceM), widthPx - 12)} y={margin.top - 10 - row * namePx.row} textAnchor="middle">
              {name}
            </text>
          )}
        </g>
      ))}
    </g>
  );
}

/** Gives names to the marks that have room for them, the first come first. */
function namedMarks(marks: readonly ProfileMark[], x: (distanceM: number) => number): NamedMark[] {
  // The first row begins behind the unit of the axis.
  const takenTo = [margin.left - 14, margin.left - 4];
  return marks.map((mark) => {
    const half = (mark.name.length * namePx.perLetter) / 2;
    const row = ([0, 1] as const).find((each) => x(mark.distanceM) - half >= takenTo[each]! + namePx.between);
    if (row !== undefined) takenTo[row] = x(mark.distanceM) + half;
    return { ...mark, row: row ?? null };
  });
}

function distanceUnit(lengthM: number, units: 'metric' | 'imperial'): readonly [name: string, metres: number] {
  const far = farUnit(units);
  const unit = lengthM < (units === 'imperial' ? far.lengthM / 2 : far.lengthM) ? lengthUnit(units) : far;
  return [unit.name, unit.lengthM];
}

/** Without zeros behind. */
function trimmed(figure: number): string {
  return fixed(figure, Number.isInteger(figure) ? 0 : figure * 10 === Math.round(figure * 10) ? 1 : 2);
}
