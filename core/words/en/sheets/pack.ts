import type { Figures } from '../../types.ts';

/** The handover pack: its parts and its cover. */
export const pack = {
  title: 'Handover pack',
  parts: {
    map: 'Map at true scale',
    switches: 'Sections, paddocks and cut-out switches',
    crossings: 'Crossings: schedule, and a card for each',
    tests: 'Tests: results, and a sheet for each section',
    power: 'Energiser and earth',
    materials: 'Materials as built',
    changes: 'Changes from the plan and since the last handover',
    tags: 'Gate tags to cut out',
  },
  subtitle: 'Handover pack of the fence network and what is buried under its gateways',
  handover: 'Handover',
  handedOverBy: 'Handed over by',
  takenOverBy: 'Taken over by',
  before: 'Before you touch or dig',
  caution: ({ caution }: { caution: string }) => `•  ${caution}`,
  contents: 'In this pack',
  attached: 'Attached to this file: the whole property as GeoJSON.',
  left: ({ count, live }: { count: number; live: number }, f: Figures) => {
    const what = f.plural(count, { one: 'One thing is', other: `${f.number(count)} things are` });
    const perhapsLive = live > 0 ? `, ${f.number(live)} of them perhaps live` : '';
    return `${what} in the ground that the drawing shows no longer${perhapsLive}: see “In the ground, no longer drawn”.`;
  },
  sketch: 'Sketch, north up. A dot is a crossing in the ground.',
  sketchWithPlanned: 'Sketch, north up. A dot is a crossing in the ground. A ring is a planned one: not in the ground.',
  sketchOf: ({ property }: { property: string }) =>
    `Sketch of ${property}: fences, and a dot at each crossing in the ground. Not to scale.`,
  sketchOfWithPlanned: ({ property }: { property: string }) =>
    `Sketch of ${property}: fences, and a dot at each crossing in the ground. A ring is a planned one: not in the ground. Not to scale.`,
  qrCode: ({ uri }: { uri: string }) => `QR code of ${uri}`,
};

/** A tape to a tag's bend, written out. */
type TagTapes = { readonly tapes: readonly string[]; readonly more: number };

const bend = ({ tapes, more }: TagTapes, f: Figures) =>
  `Bend: ${tapes.join(', ')}${more > 0 ? ` and ${f.number(more)} more` : ''}`;

/** Tags to fix to a gate. */
export const tag = {
  title: 'Gate tags to cut out',
  /** `depth` as it is said. */
  here: ({ depth }: { depth: string }) => `Live cable buried here: ${depth}.`,
  nearHere: ({ depth }: { depth: string }) => `Live cable buried near here: ${depth}.`,
  doNotDig: 'Do not dig. Energiser off, fence proven dead, other services located first.',
  invented: ({ property }: { property: string }) => `${property} (invented example)`,
  otherCables: 'Other cables lie in this trench.',
  moreOnCard: 'Its tapes are more than this tag holds: find it by its card in the pack.',
  moved: ({ moved }: { moved: string }) =>
    `The gate was moved: the cable lies where it stood, up to ${moved} from here.`,
  pointDoesNotMeet: ({ point }: { point: string }) => `${point}: its tapes do not meet.`,
  pointOpen: ({ point, places }: { point: string; places: readonly string[] }) =>
    `${point}: on the ${places.join(' or the ')}: not said which.`,
  notTaped: 'Not taped: find it with care.',
  tape: ({ distance, post }: { distance: string; post: string }) => `${distance} from ${post}`,
  bend: (values: TagTapes, f: Figures) => `${bend(values, f)}.`,
  bendOnSide: ({ side, ...values }: TagTapes & { side: string }, f: Figures) => `${bend(values, f)}, on the ${side}.`,
  bendDoesNotMeet: (values: TagTapes, f: Figures) => `${bend(values, f)}: these tapes do not meet. Find it with care.`,
  bendOpen: ({ places, ...values }: TagTapes & { places: readonly string[] }, f: Figures) =>
    `${bend(values, f)}, on the ${places.join(' or the ')}: not said which.`,
};

/** What a file is called after its property's name, and what it is. */
export const book = {
  titled: ({ property, title }: { property: string; title: string }) => `${property}: ${title}`,
  pack: 'handover pack',
  packSubject: 'Handover pack of a fence network',
  packInvented: 'Handover pack of an invented example',
  geoJson: 'The whole property as GeoJSON (RFC 7946)',
  order: 'order',
  orderSubject: 'Order for a fence network',
  orderInvented: 'Order for an invented example',
  sheets: ({ scale }: { scale: string }) => `fence network, map sheets at ${scale}`,
  sheetsSubject: 'Fence network',
  sheetsInvented: 'Fence network of an invented example',
  crossing: ({ gateway }: { gateway: string }) => `crossing at ${gateway}`,
  dig: 'dig sheet',
  findSubject: 'To find what is buried',
  findInvented: 'To find what is buried; an invented example',
};
