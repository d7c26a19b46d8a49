import { describe, expect, it } from 'vitest';
import type { Item } from '../../../core/drawing/displayList.ts';
import { paletteOf } from '../../../core/drawing/palette.ts';
import { type Pen, paperPen } from '../../../core/drawing/pen.ts';
import { createTraces } from '../../../core/drawing/traces.ts';
import { paintItem, ptPerMm } from '../../../electron/print/pdfPainter.ts';
import { paintItems } from '../../../renderer/map/canvas/paintItems.ts';
import { signPen } from '../../../renderer/map/plane/screenPen.ts';
import { symbols } from './symbols.ts';

/** A step of a path, or what is done with the path; lengths divided by the painter's unit. */
type Call = readonly [what: string, ...figures: (number | string)[]];

/** Notes what is asked of a canvas. */
function recordedCanvas(items: readonly Item[], unit: number): Call[] {
  const calls: Call[] = [];
  const state: Record<string, unknown> = {};
  let dash: readonly number[] = [];
  const notes: Record<string, (...args: number[]) => void> = {
    moveTo: (x, y) => calls.push(['move', x! / unit, y! / unit]),
    lineTo: (x, y) => calls.push(['line', x! / unit, y! / unit]),
    closePath: () => calls.push(['close']),
    arc: (x, y, r) => {
      // A full circle; the step to its beginning belongs to it.
      calls.pop();
      calls.push(['circle', x! / unit, y! / unit, r! / unit]);
    },
    setLineDash: (next) => {
      dash = next as unknown as number[];
    },
    fill: () => calls.push(['fill', String(state.fillStyle)]),
    stroke: () =>
      calls.push([
        'stroke',
        String(state.strokeStyle),
        String(state.lineCap),
        (state.lineWidth as number) / unit,
        ...dash.map((each) => each / unit),
      ]),
  };
  const ctx = new Proxy(state, {
    get: (_, name: string) => notes[name] ?? (() => {}),
    set: (_, name: string, value) => {
      state[name] = value;
      return true;
    },
  });
  paintItems(ctx as unknown as CanvasRenderingContext2D, items);
  return calls;
}

/** Notes what is asked of a PDF. */
function recordedPdf(items: readonly Item[]): Call[] {
  const calls: Call[] = [];
  const state = { fill: '', stroke: '', cap: '', width: 0, dash: [] as number[] };
  const fill = () => calls.push(['fill', state.fill]);
  const stroke = () => calls.push(['stroke', state.stroke, state.cap, state.width, ...state.dash]);
  const notes: Record<string, (...args: never[]) => void> = {
    moveTo: (x: number, y: number) => calls.push(['move', x / ptPerMm, y / ptPerMm]),
    lineTo: (x: number, y: number) => calls.push(['line', x / ptPerMm, y / ptPerMm]),
    circle: (x: number, y: number, r: number) => calls.push(['circle', x / ptPerMm, y / ptPerMm, r / ptPerMm]),
    closePath: () => calls.push(['close']),
    lineWidth: (width: number) => {
      state.width = width / ptPerMm;
    },
    lineCap: (cap: string) => {
      state.cap = cap;
    },
    strokeColor: (ink: string) => {
      state.stroke = ink;
    },
    fillColor: (ink: string) => {
      state.fill = ink;
    },
    dash: (on: number, { space }: { space: number }) => {
      state.dash = [on / ptPerMm, space / ptPerMm];
    },
    undash: () => {
      state.dash = [];
    },
    fill,
    stroke,
    fillAndStroke: () => {
      fill();
      stroke();
    },
  };
  const doc: object = new Proxy(
    {},
    {
      get:
        (_, name: string) =>
        (...args: never[]) => {
          notes[name]?.(...args);
          return doc;
        },
    },
  );
  for (const item of items) paintItem(doc as Parameters<typeof paintItem>[0], item);
  return calls;
}

/** Circles of one item are filled and stroked one by one in a PDF, together on a canvas; whichever, what is drawn. */
function strokesOf(calls: readonly Call[]): string[] {
  const rounded = calls.map((call) =>
    call.map((part) => (typeof part === 'number' ? part.toFixed(4) : part)).join(' '),
  );
  return rounded.filter((call, i) => !(/^(fill|stroke)/.test(call) && rounded.slice(0, i).includes(call)));
}

const withoutWords = (items: readonly Item[]) => items.filter(({ kind }) => kind !== 'text');
const unit = 7.5;
const largePen: Pen = { ...paperPen, unit };
const all = Object.entries(symbols).flatMap(([kind, states]) =>
  Object.entries(states).map(([state, draw]) => ({ name: `${kind}, ${state}`, draw })),
);

describe('one symbol', () => {
  it.each(all)('$name: the same on canvas and in a PDF, up to scale', ({ draw }) => {
    const canvas = strokesOf(recordedCanvas(withoutWords(draw(largePen)), unit));
    const pdf = strokesOf(recordedPdf(withoutWords(draw(paperPen))));
    expect(canvas.length).toBeGreaterThan(0);
    expect(steps(canvas)).toEqual(steps(pdf));
    expect(canvas.filter(isInk).sort()).toEqual(pdf.filter(isInk).sort());
  });

  it('and a trace of thousands of vertices too', () => {
    const traced = (scale: number) => {
      const traces = createTraces();
      for (let line = 0; line < 3; line++) {
        traces.begin();
        for (let i = 0; i < 1000; i++) traces.add(i * scale, Math.sin(i + line) * scale);
      }
      // A lone vertex draws nothing.
      traces.begin();
      traces.add(0, 0);
      return [traces.done({ width: 0.5 * scale, ink: '#000000' })];
    };
    const canvas = recordedCanvas(traced(unit), unit);
    expect(strokesOf(canvas)).toEqual(strokesOf(recordedPdf(traced(1))));
    expect(canvas.filter(([what]) => what === 'line')).toHaveLength(3 * 999);
  });
});

const isInk = (call: string) => /^(fill|stroke)/.test(call);
const steps = (calls: readonly string[]) => calls.filter((call) => !isInk(call));

describe('the open switch', () => {
  const draw = symbols.switch!['open, built']!;
  const bladeDegrees = (calls: readonly Call[]) => {
    // The only slanting line of it.
    for (const [i, [what, x, y]] of calls.entries()) {
      const [before, fromX, fromY] = calls[i - 1] ?? [''];
      if (what !== 'line' || before !== 'move') continue;
      const degrees = (Math.atan2(Number(fromY) - Number(y), Number(x) - Number(fromX)) * 180) / Math.PI;
      if (Math.abs(degrees) > 1) return degrees;
    }
    return 0;
  };

  it('lifts its blade by 30 degrees on paper and on the screen at every scale and theme', () => {
    expect(bladeDegrees(recordedPdf(draw(paperPen)))).toBeCloseTo(30, 9);
    for (const metresPerPx of [0.01, 1, 30]) {
      for (const theme of ['light', 'dark'] as const) {
        expect(bladeDegrees(recordedCanvas(draw(signPen(metresPerPx, paletteOf(theme))), 1))).toBeCloseTo(30, 9);
      }
    }
  });
});
