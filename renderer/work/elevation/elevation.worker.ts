import { expose } from 'comlink';
import { hearLocale } from '../workerLocale.ts';
import { readElevation } from './readElevation.ts';

/** Reads one elevation model beside the window. */
const elevationRoom = { read: readElevation };
export type ElevationFunctions = typeof elevationRoom;

hearLocale();
expose(elevationRoom);
