import { useState } from 'react';
import { propertyOf } from '../../../core/model/project.ts';
import { roughUnit } from '../../../core/words/numbers/units.ts';
import { useOpenFile } from '../../state/appState.ts';
import { say } from '../../state/choose.ts';
import { exportFile } from '../../state/exportFile.ts';
import { useUnits } from '../../state/useUnits.ts';
import { makePhoneFile } from './phoneFile.ts';
import { useCrossingRows } from './useCrossingRows.ts';

/** What goes to the paddock: everything for the phone in one file. */
export function TakeAlongView() {
  const units = useUnits();
  const file = useOpenFile();
  const rows = useCrossingRows();
  const { placed } = propertyOf(file.project);
  const [making, setMaking] = useState(false);
  const make = async () => {
    setMaking(true);
    try {
      const { fileName, photosLeft } = await makePhoneFile(file);
      const left = photosLeft > 0 ? ` ${photosLeft} photos found no room in it.` : '';
      say(`${fileName} is made.${left}`, 'done');
    } finally {
      setMaking(false);
    }
  };
  return (
    <section className="block" aria-label="Take along">
      <h2>On the phone</h2>
      <p>
        One file with the map, a card for each of the {rows.length} buried crossings with its ties, depths and photos,
        and the switch register. It can be searched, and it needs no network. Send it to the phone and open it there.
      </p>
      <p className="buttons">
        <button type="button" className="fix" disabled={making} onClick={() => void make()}>
          {making ? 'Making the file…' : 'Make the file for the phone'}
        </button>
      </p>
      <p className="field-hint">
        It shows what is in this file today. Make it again after a change; and keep the old ones off the phone.
      </p>
      <h2>On a handheld receiver</h2>
      <p>
        Gateways, switches and posts as waypoints, fences and crossings as tracks. A receiver is some {roughUnit(units)}{' '}
        off: it leads to the gateway, and the tapes lead to the cable.
      </p>
      <p className="buttons">
        {(['gpx', 'kml'] as const).map((format) => (
          <button
            key={format}
            type="button"
            disabled={!placed}
            title={placed ? undefined : 'The property has no place on earth yet.'}
            onClick={() => void exportFile(format)}
          >
            Export {format.toUpperCase()}
          </button>
        ))}
      </p>
    </section>
  );
}
