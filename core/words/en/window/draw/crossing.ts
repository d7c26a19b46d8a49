import type { Figures } from '../../../types.ts';
import { compass } from '../../things.ts';

type At = { readonly gateway: string };

/** What of a crossing is changed, as its step of undo says. */
const parts = {
  bowM: 'curve',
  bowSide: 'side',
  depthM: 'depth',
  riserHeightM: 'riser height',
  height: 'height',
  tailM: 'tails',
  allowanceM: 'allowance',
  pipeBoreMm: 'pipe',
  minBendRadiusM: 'least bend radius',
  cableId: 'cable',
  earth: 'earth',
  earthConnectionM: 'earth joint',
};

const states = { planned: 'planned', built: 'built' };

/** How the live wire and the earth get past a gateway. */
export const crossing = {
  region: ({ gateway }: At) => `Crossing at ${gateway}`,
  over: ({ gateway }: At) => `Crossing over ${gateway}`,
  under: ({ gateway }: At) => `Crossing under ${gateway}`,
  stopsHere: 'The live wire stops here: nothing carries it past the gateway.',
  notNeeded: 'This fence is not live, so none is needed.',
  add: 'Add a crossing',
  remove: 'Remove the crossing',
  trench: 'Trench',
  pipe: 'Pipe',
  liveCable: 'Live cable',
  earthCable: 'Earth cable',
  earthWire: 'Earth wire',
  none: 'none',
  formulas: {
    trench: 'along the curve',
    pipe: 'trench + 2 x (depth + riser) + allowance',
    liveCable: 'pipe + 2 x tail',
    earthCable: 'trench + 2 x (depth + joint height)',
    overheadLive: 'span + 2 x (height + tail) + allowance',
    overheadEarth: 'span + 2 x height + allowance',
  },
  caution:
    'Have other buried services located before you dig. Turn the energiser off and prove the fence dead before work.',
  curveHint: 'How far the trench curves off the straight line.',
  curveAssumed: 'Assumed: a share of the width. Type it or drag it on the map; empty goes back to the assumption.',
  toThe: ({ side }: { side: keyof typeof compass }) => `the ${compass[side]}`,
  bendRadius: ({ radiusM, leastM }: { radiusM: number; leastM: number }, f: Figures) =>
    Number.isFinite(radiusM)
      ? `Bend radius ${f.tape(radiusM)}; the pipe allows ${f.tape(leastM)} and up.`
      : `No bend; the pipe allows ${f.tape(leastM)} and up.`,
  wireHeight: 'Height of the wire',
  earthOverhead: 'An earth wire goes across overhead too',
  steps: {
    add: ({ gateway }: At) => `Add a crossing at ${gateway}`,
    remove: ({ gateway }: At) => `Remove the crossing at ${gateway}`,
    method: ({ gateway }: At) => `Change the crossing at ${gateway}`,
    change: ({ part, gateway }: At & { part: keyof typeof parts }) =>
      `Change the ${parts[part]} of the crossing at ${gateway}`,
    seal: ({ gateway }: At) => `Note the seal of the crossing at ${gateway}`,
    mark: ({ status, gateway }: At & { status: keyof typeof states }) =>
      `Mark ${states[status]}: the crossing at ${gateway}`,
  },
};
