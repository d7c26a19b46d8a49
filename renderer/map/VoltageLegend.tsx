import { paletteOf } from '../../core/drawing/palette.ts';
import { formatVoltage } from '../../core/words/numbers/write.ts';
import type { VoltageShading } from './mapTypes.ts';

interface VoltageLegendProps {
  readonly voltage: VoltageShading;
  readonly theme: 'light' | 'dark';
}

/** What the shades of the runs mean, with figures. */
export function VoltageLegend({ voltage, theme }: VoltageLegendProps) {
  const { ramp } = paletteOf(theme);
  return (
    <figure className="map-legend">
      <figcaption>Estimated peak voltage</figcaption>
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
        under {formatVoltage(voltage.minimumV)}
        <span className="map-legend-dead" aria-hidden="true">
          ✕
        </span>{' '}
        dead, 0 V
      </p>
    </figure>
  );
}
