import { paletteOf } from '../../core/drawing/palette.ts';
import { plainWords } from '../../core/words/figures.ts';
import { formatVoltage } from '../../core/words/numbers/write.ts';
import type { VoltageShading } from './mapTypes.ts';

interface VoltageLegendProps {
  readonly voltage: VoltageShading;
  readonly theme: 'light' | 'dark';
}

/** What the shades of the runs mean, with figures. */
export function VoltageLegend({ voltage, theme }: VoltageLegendProps) {
  const { ramp } = paletteOf(theme);
  const words = plainWords().window.map.voltage;
  return (
    <figure className="map-legend">
      <figcaption>{words.title}</figcaption>
      <ol className="map-legend-ramp">
        {ramp.map((colour, i) => (
          <li key={colour}>
            <span className="map-legend-shade" style={{ background: colour }} />
            {i % 2 === 1 ? formatVoltage((voltage.maxV * (i + 1)) / ramp.length) : ''}
          </li>
        ))}
      </ol>
      <p>
        <span className="map-legend-mark" aria-hidden="true">
          ○
        </span>{' '}
        {words.under({ volts: voltage.minimumV })}
        <span className="map-legend-dead" aria-hidden="true">
          ✕
        </span>{' '}
        {words.dead}
      </p>
    </figure>
  );
}
