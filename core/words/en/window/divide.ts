import type { Figures, Phrase } from '../../types.ts';

const reasons = {
  gateway: 'supply side of a crossing',
  takeOff: 'branch',
  strainer: 'strainer along a run',
  added: 'added by hand',
  existing: 'a switch stands here',
};

const rules = { free: 'Let the plan decide', forced: 'Always', forbidden: 'Never' };

/** The Divide workspace. */
export const divide = {
  registers: 'Registers',
  register: {
    sections: 'Sections',
    switches: 'Switches',
    places: 'Places for a switch',
    tests: 'Test sheets',
    limits: 'Limits',
  },
  nothingWrong: 'The checks find nothing wrong with the sections.',
  section: 'Section',
  switch: 'Switch',
  place: 'Place',
  none: 'none',
  plan: {
    title: 'The plan',
    /** What is worked out. */
    what: 'the plan',
    stoppedBefore: 'Stopped before there was a plan.',
    working: 'Working out the plan…',
    add: ({ count }: { count: number }, f: Figures) =>
      `Add ${f.number(count, 0)} ${f.plural(count, { one: 'switch', other: 'switches' })}: hollow signs on the map.`,
    leaveOut: ({ names }: { names: readonly string[] }, f: Figures) =>
      `Leave out ${f.list(names, 12)}: the plan does without. Pin a switch to keep it.`,
    sections: 'Sections',
    longest: 'Longest',
    cost: 'Cost, relative',
    costHint: 'In switches at a gateway',
    atLeast: ({ cost }: { cost: number }, f: Figures) => `at least ${f.number(cost, 1)}`,
    stopped: 'This was the plan before the last change; the new one was stopped before there was an answer.',
    again: 'This was the plan before the last change; it is being worked out again…',
    changes: 'What a change would mean',
    use: 'Use these switches',
    useStep: 'Use the switches of the plan',
    looking: 'Looking for a better plan',
    stop: 'Stop',
    goOn: 'Go on looking',
    overLimit: 'Over the limits whatever switches are set:',
    show: 'Show',
    more: ({ count }: { count: number }, f: Figures) => `And ${f.number(count)} more`,
    overLimitRemedy:
      'Mark a strainer there, add a place for a switch, allow one where it is ruled out, or raise the limit.',
  },
  rings: {
    title: 'Rings',
    settled: ({ names }: { names: readonly string[] }, f: Figures) =>
      `${f.list(names)} ${f.plural(names.length, { one: 'is off', other: 'are off' })}, so every section is fed one way. ${f.plural(names.length, { one: 'On, it brings', other: 'On, they bring' })} current from the other side while the first is worked on.`,
    advice: ({ inRings, off }: { inRings: readonly string[]; off: readonly string[] }, f: Figures) =>
      `${f.list(inRings)} lie in rings: turning one off alone cuts nothing off. With ${f.list(off)} off every section is fed one way, the shortest, and a fault is found switch by switch.`,
    weakest: ({ nowV, thenV }: { nowV: number; thenV: number }, f: Figures) =>
      `Weakest place: ${f.volts(nowV)} now, ${f.volts(thenV)} then (estimates).`,
    leaveOff: ({ names }: { names: readonly string[] }, f: Figures) => `Leave ${f.list(names)} off`,
  },
  sections: {
    caption: 'Sections: what stays joined when every switch is off',
    empty: 'No live fence yet, so there is nothing to divide.',
    fence: 'Fence',
    over: ({ lengthM }: { lengthM: number }, f: Figures) => `over by ${f.length(lengthM)}`,
    gateways: 'Gateways',
    tooMany: ({ count }: { count: number }, f: Figures) => `${f.number(count)} too many`,
    fedFrom: 'Fed from',
    notFed: 'not fed',
    /** The ways that it is fed: the energiser, switches with the section before them or without one. */
    ways: ({
      energiser,
      through,
    }: {
      energiser: boolean;
      through: readonly { readonly name: string; readonly from: string | null }[];
    }) =>
      [
        ...(energiser ? ['the energiser'] : []),
        ...through.map(({ name, from }) => (from === null ? name : `${name} from ${from}`)),
      ].join(', '),
  },
  switches: {
    caption: 'Cut-out switches',
    empty: 'No switches yet. Use the switches of the plan above, or press S on the map.',
    fed: 'Fed',
    off: ({ fed }: { fed: Phrase }, f: Figures) => `${f.say(fed)}, off`,
    cutsOff: 'Cuts off',
    nothingAlone: 'nothing alone',
    nothing: 'nothing',
    notOnFence: 'It stands on no live fence.',
    wrongSide:
      'It stands on the far side of its crossing: the buried cable stays live when it is turned off. Move it to the supply side.',
    step: {
      rename: ({ name }: { name: string }) => `Rename ${name}`,
      leaveOn: ({ name }: { name: string }) => `Leave ${name} on`,
      leaveOff: ({ name }: { name: string }) => `Leave ${name} off`,
      pin: ({ name }: { name: string }) => `Pin ${name}`,
      unpin: ({ name }: { name: string }) => `Unpin ${name}`,
      planned: ({ name }: { name: string }) => `Mark planned: ${name}`,
      built: ({ name }: { name: string }) => `Mark built: ${name}`,
    },
  },
  places: {
    what: 'the places for a switch',
    empty:
      'No place for a switch yet: draw gateways, branches or strainers on a live fence, or mark places with the tool Place on the map.',
    cost: 'Cost',
    inPlan: 'In the plan',
    yes: 'yes',
    no: 'no',
    here: 'A switch here',
    rules,
    why: ({ place, why }: { place: Phrase; why: keyof typeof reasons }, f: Figures) =>
      `${f.say(place)}, ${reasons[why]}`,
    remove: 'Delete',
    removePlace: ({ place }: { place: Phrase }, f: Figures) => `Delete the place ${f.say(place)}`,
    switchAt: ({ place }: { place: Phrase }, f: Figures) => `A switch at ${f.say(place)}`,
    rule: ({ place, rule }: { place: Phrase; rule: keyof typeof rules }, f: Figures) =>
      `${rules[rule]}: a switch at ${f.say(place)}`,
  },
  limits: {
    step: 'Change the limits',
    cost: 'What a switch costs',
    costHint: 'Relative figures; common practice, no source. The plan looks for the cheapest set.',
  },
  tests: {
    empty: 'No sections yet, so there is nothing to test.',
    caution:
      'Turn the energiser off and prove the fence dead before you touch a wire or a switch. Keep people and stock away while testing.',
    off: 'Off',
    on: 'On',
    should: 'What it should read',
    usual: ({ switches }: { switches: Phrase }, f: Figures) => `Usual there, ${f.say(switches)}`,
    lowUnder: 'Low under',
    goodFrom: 'Good from',
  },
};
