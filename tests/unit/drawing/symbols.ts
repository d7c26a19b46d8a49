import type { Item, PaperPoint } from '../../../core/drawing/displayList.ts';
import type { Pen } from '../../../core/drawing/pen.ts';
import { crossingSign, spotSign } from '../../../core/drawing/signs/crossingSign.ts';
import { earthSign } from '../../../core/drawing/signs/earthSign.ts';
import { energiserSign } from '../../../core/drawing/signs/energiserSign.ts';
import { findingSign } from '../../../core/drawing/signs/findingSign.ts';
import { farGateSign, gateSign } from '../../../core/drawing/signs/gateSign.ts';
import { inGroundLine, inGroundSign } from '../../../core/drawing/signs/inGroundSign.ts';
import { northArrow } from '../../../core/drawing/signs/northArrow.ts';
import { placeSign } from '../../../core/drawing/signs/placeSign.ts';
import { postSign } from '../../../core/drawing/signs/postSign.ts';
import { drawScaleBar, longestBar } from '../../../core/drawing/signs/scaleBar.ts';
import { suggestedSwitchSign, surplusMark, switchSign } from '../../../core/drawing/signs/switchSign.ts';
import { leadOutStroke, trenchStroke } from '../../../core/drawing/strokes/buried.ts';
import { drawDeadFence, drawFence, sectionMarks } from '../../../core/drawing/strokes/fence.ts';
import { floodZone, serviceLine, servicePoint } from '../../../core/drawing/strokes/services.ts';
import type { ServiceKind } from '../../../core/model/things.ts';

/** Every symbol in every state, by what it is, about the point 10, 10 of a sheet times the pen's unit. */
export type Symbols = Readonly<Record<string, (pen: Pen) => readonly Item[]>>;

const statuses = ['planned', 'built'] as const;
const at = ({ unit }: Pen, x: number, y: number): PaperPoint => [x * unit, y * unit];
const middle = (pen: Pen) => at(pen, 10, 10);
const bow = (pen: Pen): PaperPoint[] => [at(pen, 8, 10), at(pen, 9, 11), at(pen, 11, 11), at(pen, 12, 10)];
const bent = (pen: Pen): PaperPoint[] => [at(pen, 0, 10), at(pen, 20, 10), at(pen, 20, 22)];
const straight = (pen: Pen): PaperPoint[] => [at(pen, 3, 10), at(pen, 17, 10)];

export const symbols: Readonly<Record<string, Symbols>> = {
  switch: {
    ...each(['closed', 'open'], (normally) =>
      each(statuses, (status) => (pen) => switchSign(middle(pen), [1, 0], { normally, status }, pen).items),
    ),
    'open, along a fence that runs down to the left': (pen) =>
      switchSign(middle(pen), [-0.6, 0.8], { normally: 'open', status: 'built' }, pen).items,
    suggested: (pen) => suggestedSwitchSign(middle(pen), pen).items,
    surplus: (pen) => [surplusMark(middle(pen), pen)],
  },
  gate: {
    ...each(['left', 'right'], (opens) =>
      each(['start', 'end'], (hungFrom) =>
        each(statuses, (status) => (pen) => {
          const look = { leaves: 1, hungFrom, opens, status } as const;
          return gateSign(at(pen, 8, 10), at(pen, 12, 10), look, false, pen).items;
        }),
      ),
    ),
    double: (pen) =>
      gateSign(
        at(pen, 8, 10),
        at(pen, 12, 13),
        { leaves: 2, hungFrom: 'start', opens: 'left', status: 'built' },
        false,
        pen,
      ).items,
    magnified: (pen) =>
      gateSign(
        at(pen, 8.8, 10),
        at(pen, 11.2, 10),
        { leaves: 1, hungFrom: 'start', opens: 'left', status: 'built' },
        true,
        pen,
      ).items,
    ...each(
      statuses,
      (status) => (pen) =>
        farGateSign(at(pen, 9.8, 10), at(pen, 10.2, 10), { leaves: 1, hungFrom: 'start', opens: 'left', status }, pen)
          .items,
    ),
  },
  post: each(['strainer', 'angle', 'other'], (role) => (pen) => postSign(middle(pen), role, pen).items),
  energiser: each(statuses, (status) => (pen) => energiserSign(middle(pen), status, pen).items),
  earth: each(statuses, (status) => (pen) => earthSign(middle(pen), status, pen).items),
  crossing: {
    ...each(['buried', 'overhead'], (method) =>
      each(statuses, (status) => (pen) => crossingSign(bow(pen), { method, status }, pen).items),
    ),
    ...each(statuses, (status) => (pen) => spotSign(middle(pen), { status }, pen).items),
    'lead-out, buried': (pen) => [lineOf(straight(pen), leadOutStroke({ buried: true, status: 'built' }, pen))],
    'lead-out, on the surface': (pen) => [
      lineOf(straight(pen), leadOutStroke({ buried: false, status: 'planned' }, pen)),
    ],
    'trench, measured': (pen) => [lineOf(bow(pen), trenchStroke(true, pen))],
    'trench, assumed': (pen) => [lineOf(bow(pen), trenchStroke(false, pen))],
    'place, certain': (pen) => placeSign(middle(pen), true, 0.9, pen).items,
    'place, not certain': (pen) => placeSign(middle(pen), false, 0.9, pen).items,
  },
  inGround: {
    'sign, dead': (pen) => inGroundSign(middle(pen), true, pen).items,
    'sign, may be live': (pen) => inGroundSign(middle(pen), false, pen).items,
    'line, dead': (pen) => inGroundLine([bent(pen)], true, pen),
    'line, may be live': (pen) => inGroundLine([bent(pen)], false, pen),
  },
  finding: each(
    ['hint', 'notKnown', 'warning', 'error'],
    (severity) => (pen) => findingSign(middle(pen), severity, pen).items,
  ),
  fence: {
    ...each(
      [0, 1, 2, 3, 4, 5, 6, 7],
      (index) => (pen) => drawFence(bent(pen), 'built', 0.5 * pen.unit, sectionMarks(index), pen),
    ),
    planned: (pen) => drawFence(bent(pen), 'planned', 0.5 * pen.unit, 'plain', pen),
    'planned, too thin to be hollow': (pen) => drawFence(bent(pen), 'planned', 0.2 * pen.unit, 'plain', pen),
    ...each(statuses, (status) => (pen) => drawDeadFence(bent(pen), status, pen)),
  },
  service: {
    ...each(
      ['powerLine', 'waterPipe', 'road', 'path', 'creek'] satisfies ServiceKind[],
      (what) => (pen) => serviceLine({ what, buried: false }, bent(pen), pen),
    ),
    buried: (pen) => serviceLine({ what: 'gasPipe', buried: true }, bent(pen), pen),
    point: (pen) => servicePoint('drain', middle(pen), pen),
    'other earth': (pen) => servicePoint('earthElectrode', middle(pen), pen),
    floodZone: (pen) => {
      const ring = [at(pen, 2, 2), at(pen, 18, 4), at(pen, 12, 16)];
      const frame = [0, 0, 20 * pen.unit, 20 * pen.unit] as const;
      return floodZone(ring, frame, (path) => [[...path]], pen);
    },
  },
  orientation: {
    'north arrow': (pen) => northArrow(at(pen, 10, 20), pen),
    'scale bar': (pen) => drawScaleBar(longestBar(0.5 * pen.unit, 'metric', 45 * pen.unit), at(pen, 2, 10), pen),
    'scale bar, imperial': (pen) =>
      drawScaleBar(longestBar(0.5 * pen.unit, 'imperial', 45 * pen.unit), at(pen, 2, 10), pen),
  },
};

function lineOf(path: readonly PaperPoint[], stroke: ReturnType<typeof leadOutStroke>): Item {
  return { kind: 'path', paths: [path], closed: false, stroke, fill: null };
}

/** The same for each of some states, named by them. */
function each<S extends string | number>(
  states: readonly S[],
  make: (state: S) => Symbols | ((pen: Pen) => readonly Item[]),
): Symbols {
  return Object.fromEntries(
    states.flatMap((state) => {
      const made = make(state);
      if (typeof made === 'function') return [[String(state), made]];
      return Object.entries(made).map(([name, draw]) => [`${state}, ${name}`, draw]);
    }),
  );
}
