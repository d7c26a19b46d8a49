import { useState } from 'react';
import { propertyOf } from '../../../core/model/project.ts';
import { useOpenFile } from '../../state/appState.ts';
import { say } from '../../state/choose.ts';
import { exportFile } from '../../state/exportFile.ts';
import { useWords } from '../../state/useFigures.ts';
import { makePhoneFile } from './phoneFile.ts';
import { useCrossingRows } from './useCrossingRows.ts';

/** What goes to the paddock: everything for the phone in one file. */
export function TakeAlongView() {
  const { along: words, views } = useWords().window.find;
  const file = useOpenFile();
  const rows = useCrossingRows();
  const inGround = rows.filter(({ crossing }) => crossing.inGround).length;
  const { placed } = propertyOf(file.project);
  const [making, setMaking] = useState(false);
  const make = async () => {
    setMaking(true);
    try {
      const { fileName, photosLeft } = await makePhoneFile(file);
      say(photosLeft > 0 ? words.madeWithout({ fileName, photos: photosLeft }) : words.made({ fileName }), 'done');
    } finally {
      setMaking(false);
    }
  };
  return (
    <section className="block" aria-label={views.along}>
      <h2>{words.phone}</h2>
      <p>{words.whatIsIn({ inGround, planned: rows.length - inGround })}</p>
      <p className="buttons">
        <button type="button" className="fix" disabled={making} onClick={() => void make()}>
          {making ? words.making : words.make}
        </button>
      </p>
      <p className="field-hint">{words.keepNew}</p>
      <h2>{words.receiver}</h2>
      <p>{words.waypoints(null)}</p>
      <p className="buttons">
        {(['gpx', 'kml'] as const).map((format) => (
          <button
            key={format}
            type="button"
            disabled={!placed}
            title={placed ? undefined : words.notPlaced}
            onClick={() => void exportFile(format)}
          >
            {words.export({ format: format.toUpperCase() })}
          </button>
        ))}
      </p>
    </section>
  );
}
