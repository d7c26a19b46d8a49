import type { Figures } from '../../types.ts';

/** Heads of columns and rows that many tables have. */
export const heads = {
  number: 'No.',
  date: 'Date',
  gateway: 'Gateway',
  section: 'Section',
  sections: 'Sections',
  energiser: 'Energiser',
  place: 'Place',
  state: 'State',
  note: 'Note',
  remarks: 'Remarks',
  together: 'Together',
  what: 'What',
  usualThere: 'Usual there',
  goodFrom: 'Good from',
  meterWeatherBy: 'Meter, weather, by',
};

/** What stands in cells, and short answers. */
export const cells = {
  yes: 'yes',
  no: 'no',
  none: 'none',
  notNoted: 'not noted',
  notKnown: 'not known',
  planned: 'planned',
  built: 'built',
  buried: 'buried',
  overhead: 'overhead',
  /** How a switch stands. */
  closed: 'on (closed)',
  open: 'off (open)',
  by: ({ name }: { name: string }) => `by ${name}`,
  meter: ({ name }: { name: string }) => `meter ${name}`,
  weather: ({ weather }: { weather: string }) => `weather ${weather}`,
};

/** The schedule of crossings. */
export const crossings = {
  title: 'Schedule of crossings',
  none: 'No gateway stands in a live fence line.',
  estimates:
    'Trench, pipe and cable lengths are estimates. Depth is to the top of the pipe where it was measured, else of the trench as planned.',
  assumed: 'A curve marked * is assumed as a share of the opening until it is measured.',
  crossing: 'Crossing',
  opening: 'Opening',
  curve: 'Curve',
  depth: 'Depth',
  bore: 'Pipe bore',
  trench: 'Trench',
  pipe: 'Pipe',
  liveCable: 'Live cable',
  earthCable: 'Earth cable',
  sealed: 'Sealed',
  onePost: 'One post',
  otherPost: 'Other post',
  toPipe: ({ range, measuredAt }: { range: string; measuredAt: string }) => `${range} to pipe, ${measuredAt}`,
  trenchPlanned: ({ range }: { range: string }) => `${range} trench planned, not measured`,
  noCrossing: 'No crossing: the live wire stops at this gateway.',
  moved: 'Lies where the gate’s posts stood when it was dug; its lengths are of that opening.',
  vehicles: 'Vehicles pass.',
  tightBend: ({ bendM, leastM }: { bendM: number; leastM: number }, f: Figures) =>
    `Bend of ${f.tape(bendM)} is tighter than the pipe allows (${f.tape(leastM)}).`,
};

export const sections = {
  title: 'Sections',
  none: 'No live fence is drawn, so there are no sections.',
  intro: 'A section is what stays joined when every cut-out switch is off (open).',
  /** What no set of switches brings within the limits. */
  overLimits: ({ maxM, maxGateways }: { maxM: number; maxGateways: number | null }, f: Figures) => {
    const gateways = maxGateways === null ? '' : ` and ${gatewaysOf(maxGateways, f)}`;
    return `No set of switches keeps all sections within the limit of ${f.length(maxM)} of fence${gateways}:`;
  },
  marked: 'Marked',
  fence: 'Fence',
  fed: 'Fed',
  lines: 'Lines',
  gateways: 'Gateways',
  switches: 'Switches on its border',
  energiser: 'The energiser feeds in here.',
  /** `over` with its unit. */
  tooLong: ({ over }: { over: string }) => `Longer than the limit by ${over}.`,
  tooManyGateways: ({ count }: { count: number }, f: Figures) => `${gatewaysOf(count, f)} over the limit.`,
  notFed: 'No energiser reaches it.',
};

function gatewaysOf(count: number, f: Figures): string {
  return `${f.number(count)} ${f.plural(count, { one: 'gateway', other: 'gateways' })}`;
}

export const paddocks = {
  title: 'Paddocks',
  none: 'No fence lines close in a paddock.',
  intro: 'Areas inside the fence lines as drawn, measured on the earth.',
  paddock: 'Paddock',
  area: 'Area',
  notNamed: 'Not named yet.',
};

export const switches = {
  title: 'Register of cut-out switches',
  none: 'No cut-out switch is drawn.',
  intro:
    'What goes dead is reckoned with every other switch as it normally stands. A switch that is fed from both sides cuts nothing off alone.',
  switch: 'Switch',
  stands: 'Stands',
  fed: 'Fed',
  fenceCutOff: 'Fence cut off',
  gatewaysCutOff: 'Gateways cut off',
  sectionsCutOff: 'Sections cut off',
  farSide: 'On the far side of its crossing: the buried cable stays live.',
};
