import type { Figures, Phrase } from '../../types.ts';

/** What is counted. Wire and live cable are called what their conductor is. */
export const goods = {
  /** Sorts of which there are several, in general. */
  sorts: {
    wire: 'Fence wire',
    gate: 'Gate leaf',
    gateway: 'Gateway hardware',
    pipe: 'Pipe',
    cable: 'Live cable',
    switch: 'Cut-out switch',
    stake: 'Earth stake',
  },
  ofKind: ({ sort, kind }: { sort: Phrase; kind: string }, f: Figures) => `${f.say(sort)}, ${kind}`,
  /** What is in the file no more, or not known to this version, by the word that stands in the file. */
  asWritten: ({ text }: { text: string }) => text,
  barbedWire: 'Barbed wire',
  strainer: 'Strainer post',
  gatePost: 'Gate post',
  anglePost: 'Angle post',
  stay: 'Stay',
  post: 'Intermediate post',
  dropper: 'Dropper',
  insulator: 'Post insulator',
  strainInsulator: 'Strain insulator',
  joint: 'Joint clamp',
  tightener: 'Wire tightener',
  staple: 'Staple or clip for wire that is not live',
  gate: ({ leafM }: { leafM: number }, f: Figures) => `Gate leaf, ${f.tape(leafM)}`,
  gateway: { single: 'Gateway hardware, single', double: 'Gateway hardware, double' },
  pipe: ({ boreMm }: { boreMm: number }, f: Figures) => `Pipe, ${f.number(boreMm)} mm bore`,
  earthCable: 'Earth cable',
  cableClamp: 'Cable clamp',
  earthClamp: 'Earth clamp',
  seal: 'Riser seal',
  lug: 'Cable lug',
  switch: {
    gateway: 'Cut-out switch, at a gateway',
    lineEnd: 'Cut-out switch, at a branch',
    line: 'Cut-out switch, along a run',
    leadOut: 'Cut-out switch, at the lead-out',
  },
  energiser: 'Energiser',
  surge: 'Surge protection',
  stake: ({ lengthM }: { lengthM: number }, f: Figures) => `Earth stake, ${f.tape(lengthM)}`,
  stakeClamp: 'Stake clamp',
  earthLead: 'Earth lead',
  sign: 'Warning sign',
};

/** What labour is paid by. */
export const work = {
  fenceKm: 'Build fence',
  strainer: 'Set a strainer or gate post',
  gateway: 'Hang a gateway',
  crossing: 'Make a crossing',
  trenchM: 'Dig and fill trench',
  switch: 'Fit a switch',
  stake: 'Drive an earth stake',
  energiser: 'Set up an energiser',
};
