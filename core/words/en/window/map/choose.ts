import { formatRound } from '../../../numbers/write.ts';
import type { Figures, ThingRef } from '../../../types.ts';

type Named = { readonly name: string };
type One = { readonly thing: ThingRef };

/** Selecting things, and moving what is selected. */
export const choose = {
  hint: 'Click a thing to select it. Drag the map to move about, turn the wheel to zoom.',
  hintLine: 'Drag a square to move a corner, a circle to add one. Tab steps through the corners.',
  hintSelected: 'Drag what is selected to move it. Shift and a click select more.',
  hintCorner: ({ farM }: { farM: number }, f: Figures) =>
    `Arrow keys move this corner, with Shift by ${formatRound(farM, f.units)}. Delete takes it out, Insert adds one.`,
  putCorner: ({ name }: Named) => `Put a corner into ${name}`,
  moveCorner: ({ name }: Named) => `Move a corner of ${name}`,
  deleteCorner: ({ name }: Named) => `Delete a corner of ${name}`,
  dropCorner: 'Let go where the corner shall be. What is joined comes along; hold Ctrl to part it.',
  dropNewCorner: 'Let go where the new corner shall be.',
  dropBend: 'Let go where the bend shall be.',
  moveBend: ({ name }: Named) => `Move a bend of ${name}`,
  slideGateway: ({ name }: Named) => `Slide ${name} along its fence; hold Alt to let it stand anywhere.`,
  moveGateway: ({ name }: Named) => `Move gateway ${name}`,
  dropSwitch: ({ name }: Named) => `Let go where ${name} shall be; the plan then keeps it there.`,
  moveSwitch: ({ name }: Named) => `Move switch ${name}`,
  dropThing: ({ thing }: One, f: Figures) => `Let go where ${f.thing(thing)} shall stand.`,
  moveThing: ({ thing }: One, f: Figures) => `Move ${f.thing(thing)}`,
  moveOne: ({ kind }: { kind: ThingRef['kind'] }, f: Figures) => `Move ${f.kind(kind)}`,
  dropEarthField: 'Let go where the earth field shall stand.',
  moveEarthField: 'Move the earth field',
  dropCurve: 'Let go where the trench curves to.',
  curve: ({ name }: Named) => `Curve the crossing of ${name}`,
  curveAndTrench: ({ bowM, trenchM }: { bowM: number; trenchM: number }, f: Figures) =>
    `curve ${f.tape(bowM)}, trench ${f.tape(trenchM)}`,
};
