import { useMemo } from 'react';
import { boundsOf } from '../../../core/exchange/preview/bounds.ts';
import type { PreviewFeature } from '../../../core/exchange/preview/types.ts';
import { useWords } from '../../state/useFigures.ts';

const widthPx = 860;
const heightPx = 220;
const marginPx = 8;
const mostPoints = 20_000;

/** A small picture of pieces of a file, north up, so that the wrong file is seen at once. */
export function PreviewSketch({ features }: { readonly features: readonly PreviewFeature[] }) {
  const words = useWords().window.exchange.importing;
  const drawing = useMemo(() => sketch(features), [features]);
  if (!drawing) return null;
  return (
    <svg className="preview-sketch" viewBox={`0 0 ${widthPx} ${heightPx}`} role="img" aria-label={words.sketch}>
      <path d={drawing.lines} />
      {drawing.points.map(([x, y]) => (
        <circle key={`${x} ${y}`} cx={x} cy={y} r={3} />
      ))}
    </svg>
  );
}

function sketch(features: readonly PreviewFeature[]): { lines: string; points: (readonly [number, number])[] } | null {
  const bounds = boundsOf(features);
  if (!bounds) return null;
  const [west, south, east, north] = bounds;
  const eastward = (lon: number) => (((lon - west) % 360) + 360) % 360;
  const squeeze = Math.cos((((south + north) / 2) * Math.PI) / 180);
  const spanX = Math.max(eastward(east) * squeeze, 1e-9);
  const spanY = Math.max(north - south, 1e-9);
  const scale = Math.min((widthPx - 2 * marginPx) / spanX, (heightPx - 2 * marginPx) / spanY);
  const place = ([lon, lat]: readonly [number, number]) =>
    [
      Math.round(10 * (widthPx / 2 + (eastward(lon) * squeeze - spanX / 2) * scale)) / 10,
      Math.round(10 * (heightPx / 2 - (lat - south - spanY / 2) * scale)) / 10,
    ] as const;
  const total = features.reduce((sum, { path }) => sum + path.length, 0);
  const step = Math.ceil(total / mostPoints);
  const lines: string[] = [];
  const points: (readonly [number, number])[] = [];
  for (const { shape, path } of features) {
    if (shape === 'point') points.push(place(path[0]!));
    else if (shape !== 'none') {
      const kept = path.filter((_, index) => index % step === 0 || index === path.length - 1);
      lines.push(kept.map((at, index) => `${index === 0 ? 'M' : 'L'}${place(at).join(' ')}`).join(''));
    }
  }
  return { lines: lines.join(''), points: points.slice(0, 2000) };
}
