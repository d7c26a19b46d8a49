import { services as called } from '../../things.ts';

/** What else is there: power lines, pipes, roads, water. */
export const services = {
  caption: 'Services and hazards',
  none: 'None are drawn yet. Select what it is above, then press S on the map.',
  drawNext: 'Draw next',
  draw: ({ what }: { what: keyof typeof called }) => `Draw ${called[what]}`,
  caution:
    'Only what someone has drawn or brought in is shown here. Have buried services located before any digging, and ask the line’s owner for the clearance of a power line.',
};
