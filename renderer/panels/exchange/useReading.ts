import { useEffect, useRef, useState } from 'react';
import { systemOf } from '../../../core/coordinates/systems.ts';
import { utmDefinition, utmName, utmZoneAt } from '../../../core/coordinates/utm.ts';
import type { GridSystem, ReadResult } from '../../../core/exchange/preview/types.ts';
import { type Project, propertyOf } from '../../../core/model/project.ts';
import type { LonLat } from '../../../core/model/things.ts';
import { useOpenFile } from '../../state/appState.ts';
import { figuresOf } from '../../state/useFigures.ts';
import { type ReadingRoom, startReading } from '../../work/reading.ts';

export interface Reading {
  /** Null while it is being read, and after it was stopped. */
  readonly result: ReadResult | null;
  readonly fraction: number;
  readonly stopped: boolean;
  readonly stop: () => void;
  /** Where it was read, for what is asked of it further. */
  readonly room: ReadingRoom | null;
}

interface State {
  readonly result: ReadResult | null;
  readonly fraction: number;
  readonly stopped: boolean;
  readonly room: ReadingRoom | null;
}

const begun: State = { result: null, fraction: 0, stopped: false, room: null };

/** Reads a file beside the window, once: for another way of reading it, mount the part that uses this anew. */
export function useReading(fileName: string, bytes: Uint8Array, swap: boolean): Reading {
  const { project } = useOpenFile();
  // As the property was when the file was chosen: what is taken in must not have the file read again.
  const [{ nearTo, grid }] = useState(() => ({ nearTo: placeOf(project), grid: gridOf(project) }));
  const [state, setState] = useState<State>(begun);
  const current = useRef<ReadingRoom | null>(null);
  useEffect(() => {
    const room = startReading(
      { fileName, bytes, options: { swap, nearTo, grid } },
      {
        progress: (fraction) => setState((before) => ({ ...before, fraction })),
        read: (result) => setState({ result, fraction: 1, stopped: false, room }),
      },
    );
    current.current = room;
    return () => room.end();
  }, [fileName, bytes, swap, nearTo, grid]);
  const stop = () => {
    current.current?.end();
    setState((before) => ({ ...before, stopped: true }));
  };
  return { ...state, stop };
}

function placeOf(project: Project): LonLat | null {
  const { placed, origin } = propertyOf(project);
  return placed ? origin : null;
}

/** The system that eastings and northings of this property are in; null: it is shown in degrees. */
function gridOf(project: Project): GridSystem | null {
  const system = systemOf(project.coordinateSettings.get('coordinates'));
  if (system.kind === 'projected') return { name: figuresOf(project).say(system.name), definition: system.definition };
  const place = placeOf(project);
  if (system.kind !== 'utm' || !place) return null;
  const zone = utmZoneAt(place);
  return { name: figuresOf(project).say(utmName(zone)), definition: utmDefinition(zone) };
}
