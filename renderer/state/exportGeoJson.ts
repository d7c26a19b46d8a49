import { whyNotWriteGeoJson, writeGeoJson } from '../../core/exchange/geojson/writeGeoJson.ts';
import { useApp } from './appState.ts';
import { say } from './choose.ts';
import { download } from './download.ts';

/** Hands the whole property to the user as GeoJSON. */
export function exportGeoJson(): void {
  const { file } = useApp.getState();
  if (!file) return;
  const refusal = whyNotWriteGeoJson(file.project);
  if (refusal) {
    say(refusal.message, 'refused');
    return;
  }
  download({
    fileName: `${file.fileName}.geojson`,
    mediaType: 'application/geo+json',
    bytes: new TextEncoder().encode(writeGeoJson(file.project, file.survey)),
  });
}
