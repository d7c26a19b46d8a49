import { built, handover } from './record/built.ts';
import { crossing, crossings } from './record/crossing.ts';
import { photos } from './record/photos.ts';
import { point } from './record/point.ts';
import { earthTests, readings, testRun } from './record/tests.ts';

/** The Record workspace. */
export const record = {
  registers: {
    title: 'Registers',
    crossings: 'Crossings',
    built: 'Planned and built',
    tests: 'Test run',
    readings: 'Readings',
    earth: 'Earth test',
    photos: 'Photos',
    handover: 'Hand over',
  },
  figures: { notTaped: 'not taped yet', sideNotSaid: 'side not said', joints: 'with joints underground' },
  /** Fields that several forms have. */
  fields: { day: 'Day', by: 'By', testedBy: 'Tested by', meter: 'Meter', weather: 'Weather', note: 'Note' },
  crossings,
  crossing,
  point,
  built,
  handover,
  testRun,
  readings,
  earthTests,
  photos,
};
