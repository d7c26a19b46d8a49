import type { Figures, ThingRef } from '../../../types.ts';
import { compass } from '../../things.ts';

type Named = { readonly name: string };
type Side = { readonly side: keyof typeof compass };

const states = { planned: 'planned', built: 'built' };

/** The form of what is selected. */
export const details = {
  region: ({ title }: { title: string }) => `Details: ${title}`,
  show: 'Show',
  delete: 'Delete',
  done: 'Done',
  titles: {
    several: ({ count }: { count: number }, f: Figures) => `${f.number(count)} things selected`,
    fenceLine: ({ name }: Named) => `Fence ${name}`,
    gateway: ({ name }: Named) => `Gateway ${name}`,
    switch: ({ name }: Named) => `Switch ${name}`,
    post: ({ name }: Named) => `Post ${name}`,
    energiser: ({ name }: Named) => `Energiser ${name}`,
    leadOut: ({ name }: Named) => `Lead-out ${name}`,
    earthField: 'Earth stakes',
    fenceType: ({ name }: Named) => `Fence type: ${name}`,
    reading: ({ day }: { day: string }) => `Reading of ${day}`,
    conductor: ({ name }: Named) => `Conductor: ${name}`,
    other: ({ kind, name }: ThingRef, f: Figures) => name || f.kind(kind),
  },
  steps: {
    rename: ({ name }: Named) => `Rename ${name}`,
    change: ({ name }: Named) => `Change ${name}`,
    mark: ({ status, name }: Named & { status: keyof typeof states }) => `Mark ${states[status]}: ${name}`,
    type: ({ name }: Named) => `Change the type of ${name}`,
    live: ({ name }: Named) => `Make live: ${name}`,
    notLive: ({ name }: Named) => `Take off the network: ${name}`,
    growth: ({ name }: Named) => `Change the growth on ${name}`,
    split: ({ name }: Named) => `Split ${name}`,
    deleteCorner: ({ name }: Named) => `Delete a corner of ${name}`,
    join: ({ name, other }: Named & { other: string }) => `Join ${name} and ${other}`,
    width: ({ name }: Named) => `Change the width of ${name}`,
    gate: ({ name }: Named) => `Change the gate of ${name}`,
    hinge: ({ name }: Named) => `Change the hinge post of ${name}`,
    swing: ({ name }: Named) => `Change the way ${name} swings`,
    voltage: ({ name }: Named) => `Change the voltage of ${name}`,
    use: ({ name }: Named) => `Change the use of ${name}`,
    figures: ({ name }: Named) => `Change the figures of ${name}`,
    cable: ({ name }: Named) => `Change the cable of ${name}`,
    earthStakes: 'Change the earth stakes',
    addEarthStakes: 'Add earth stakes',
  },
  fence: {
    /** After the length, which stands out. */
    closed: ({ corners }: { corners: number }, f: Figures) => `closed line, ${cornersOf(corners, f)}`,
    open: ({ corners }: { corners: number }, f: Figures) => `open line, ${cornersOf(corners, f)}`,
    closedOnGround: ({ corners, overGroundM }: { corners: number; overGroundM: number }, f: Figures) =>
      `closed line, ${cornersOf(corners, f)}; ${f.length(overGroundM)} over the ground`,
    openOnGround: ({ corners, overGroundM }: { corners: number; overGroundM: number }, f: Figures) =>
      `open line, ${cornersOf(corners, f)}; ${f.length(overGroundM)} over the ground`,
    live: 'Live: part of the electric network',
    growth: 'Grass and weeds on the wires',
    growths: {
      property: 'As for the whole property',
      clean: 'New and clean',
      light: 'Light growth',
      heavy: 'Heavy growth',
      own: 'Own figure',
    },
    tooManyCorners: ({ count }: { count: number }, f: Figures) => `${f.number(count)} corners: too many to list here.`,
    straights: 'Straights: length and bearing of each, split or delete a corner',
    straight: 'Straight',
    length: 'Length',
    bearing: 'Bearing',
    atItsEnd: 'At its end',
    split: 'Split',
    deleteCorner: 'Delete corner',
  },
  several: {
    hint: 'Select two fence lines to join them into one, or one thing to see its details.',
    join: ({ name, other }: Named & { other: string }) => `Join ${name} and ${other} into one line`,
  },
  gate: {
    title: 'The gate',
    inFence: ({ name, hint }: Named & { hint: string }) => `In fence ${name}. ${hint}`,
    inUnknownFence: ({ hint }: { hint: string }) => `In fence not known. ${hint}`,
    hingePost: ({ side }: Side) => `The ${compass[side]} one`,
    swings: ({ side }: Side) => `The ${compass[side]}`,
    swingsInto: ({ side, paddock }: Side & { paddock: string }) => `The ${compass[side]}, into ${paddock}`,
  },
  paddock: {
    inside: 'inside its fences',
    notClosed: 'No fence closes it in now; the name is kept for when one does.',
  },
  supply: {
    label: "All four stand on the energiser's label. 500 ohm is the standard's reference load.",
    addStakes: 'Add its earth stakes',
    earthStakes: 'Earth stakes',
    cable: 'Cable',
  },
};

function cornersOf(count: number, f: Figures): string {
  return f.plural(count, { one: `${f.number(count)} corner`, other: `${f.number(count)} corners` });
}
