import type { Figures } from '../../types.ts';
import { atSpot, bareSpot, type Spot } from './spots.ts';

/** How a section is tested on its own. */
export const tests = {
  /** Where to read. */
  read: {
    beyond: ({ spot }: { spot: Spot }, f: Figures) => `just beyond ${bareSpot(spot, f)}`,
    wayIn: ({ spot }: { spot: Spot }, f: Figures) => `at ${bareSpot(spot, f)}`,
    thisSide: ({ spot }: { spot: Spot }, f: Figures) => `on this side of ${bareSpot(spot, f)}`,
    farEnd: ({ spot }: { spot: Spot }, f: Figures) => atSpot(spot, f),
  },
  step: {
    begin: 'Turn the energiser off. Prove the fence dead with a tester before you touch a wire or a switch.',
    turnOff: ({ names }: { names: readonly string[] }, f: Figures) => `Turn ${f.list(names)} off (open).`,
    nothingOff: 'No switch needs turning off.',
    seeOn: ({ name }: { name: string }) => `See that ${name} is on (closed).`,
    turnOn: 'Keep people and stock away from the fence. Turn the energiser on.',
    read: ({ place }: { place: Parameters<Figures['say']>[0] }, f: Figures) =>
      `Read the voltage ${f.say(place)}, and write it down.`,
    dead: 'Turn the energiser off and prove the fence dead.',
    lowThrough: ({ name, section }: { name: string; section: string }) =>
      `If a reading is low: with the energiser off, turn ${name} off; turn the energiser on and read on its side of the switch. If that is good, the fault is in section ${section}.`,
    low: ({ section }: { section: string }) =>
      `If a reading is low, the fault is in section ${section} or between it and the energiser.`,
    end: 'With the energiser off and the fence proved dead, put every switch back as it was.',
    notReached: ({ section }: { section: string }) =>
      `Nothing feeds section ${section}, even with every switch on. Join it to the fence first.`,
  },
};
