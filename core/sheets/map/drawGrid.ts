import type { Item, PaperBox, PaperPoint } from '../../drawing/displayList.ts';
import type { MapWindow } from '../../drawing/mapWindow.ts';
import { box, lines, stroke, text } from '../../drawing/paint.ts';
import { gridSpacing } from '../../drawing/strokes/gridSpacing.ts';
import { ink, letters, pen } from '../../drawing/style.ts';
import { type MeasureText, textBox } from '../../drawing/words.ts';
import type { Xy } from '../../geometry/types.ts';
import { pushAll } from '../../model/pushAll.ts';
import { lengthUnit } from '../../words/numbers/units.ts';
import { fixed, type Units } from '../../words/numbers/write.ts';
import type { Figures } from '../../words/types.ts';
import { emptyLayer, type MapLayer } from './layer.ts';

const crossMm = 1.6;
const tickMm = 1.4;

/** A distance between grid lines, round in metres or in feet, that puts them 30 to 75 mm apart on paper. */
export function roundGridM(scaleDenominator: number, units: Units): number {
  const { lengthM } = lengthUnit(units);
  // In feet however long: the frame's figures are all in one unit.
  return gridSpacing((1000 / scaleDenominator) * lengthM, 'metric', 30).stepM * lengthM;
}

/** The grid distance to use: as asked, unless its lines would stand closer than 4 mm on paper. */
export function gridDistanceM(askedM: number | null, scaleDenominator: number, units: Units): number {
  const usable = askedM !== null && askedM > 0 && (askedM * 1000) / scaleDenominator >= 4;
  return usable ? askedM : roundGridM(scaleDenominator, units);
}

/** Crosses where grid lines meet; metres east and north in the plane. */
export function gridLayer(
  window: MapWindow,
  ground: readonly [number, number, number, number],
  gridM: number,
): MapLayer {
  const marks: PaperPoint[][] = [];
  for (const x of gridValues(ground[0], ground[2], gridM)) {
    for (const y of gridValues(ground[1], ground[3], gridM)) {
      const at: Xy = [x, y];
      const [px, py] = window.toPaper(at);
      pushAll(
        marks,
        window.clipPaper([
          [px - crossMm, py],
          [px + crossMm, py],
        ]),
      );
      pushAll(
        marks,
        window.clipPaper([
          [px, py - crossMm],
          [px, py + crossMm],
        ]),
      );
    }
  }
  if (marks.length === 0) return emptyLayer;
  return { items: [lines(marks, stroke(pen.hairline, { ink: ink.soft }))], signs: [], lines: marks, labels: [] };
}

/** The map's frame with ticks and coordinates outside it, in metres or in feet; those that would run into `keepClear` are left out. */
export function drawMapFrame(
  window: MapWindow,
  ground: readonly [number, number, number, number],
  gridM: number,
  f: Figures,
  keepClear: readonly PaperBox[],
  measure: MeasureText,
): Item[] {
  const [left, top, right, bottom] = window.frame;
  const { lengthM } = lengthUnit(f.units);
  const decimals = Math.abs((gridM / lengthM) % 1) < 1e-6 ? 0 : 1;
  const ticks: PaperPoint[][] = [];
  const words = [];
  const style = { sizePt: letters.small, font: 'figures', align: 'centre' } as const;
  for (const x of gridValues(ground[0], ground[2], gridM)) {
    const [px] = window.toPaper([x, 0]);
    ticks.push(
      [
        [px, top],
        [px, top - tickMm],
      ],
      [
        [px, bottom],
        [px, bottom + tickMm],
      ],
    );
    words.push(text(eastText(x / lengthM, decimals, f), [px, top - tickMm - 0.5], style));
    words.push(text(eastText(x / lengthM, decimals, f), [px, bottom + tickMm + 2.1], style));
  }
  for (const y of gridValues(ground[1], ground[3], gridM)) {
    const [, py] = window.toPaper([0, y]);
    ticks.push(
      [
        [left, py],
        [left - tickMm, py],
      ],
      [
        [right, py],
        [right + tickMm, py],
      ],
    );
    words.push(text(northText(y / lengthM, decimals, f), [left - tickMm - 0.5, py], { ...style, rotationDeg: -90 }));
    words.push(text(northText(y / lengthM, decimals, f), [right + tickMm + 0.5, py], { ...style, rotationDeg: 90 }));
  }
  const room: PaperBox = [left - 1, top - 1, right + 1, bottom + 1];
  const placed: PaperBox[] = [...keepClear];
  const shown = words.filter((word) => {
    const covers = textBox(word, measure);
    const upright = word.rotationDeg === 0;
    const within = upright ? covers[0] > room[0] && covers[2] < room[2] : covers[1] > room[1] && covers[3] < room[3];
    if (!within || placed.some((other) => meet(covers, other))) return false;
    placed.push(covers);
    return true;
  });
  return [
    box(window.frame, null, stroke(pen.sign)),
    ...(ticks.length > 0 ? [lines(ticks, stroke(pen.hairline))] : []),
    ...shown,
  ];
}

function meet(a: PaperBox, b: PaperBox): boolean {
  return a[0] < b[2] && b[0] < a[2] && a[1] < b[3] && b[1] < a[3];
}

function gridValues(from: number, to: number, step: number): number[] {
  const first = Math.ceil(from / step);
  const last = Math.floor(to / step);
  return Array.from({ length: Math.max(0, last - first + 1) }, (_, i) => (first + i) * step + 0);
}

function eastText(x: number, decimals: number, f: Figures): string {
  const { east, west } = f.words.sheets.map.frame;
  return x === 0 ? '0' : (x > 0 ? east : west)({ figure: fixed(Math.abs(x), decimals) });
}

function northText(y: number, decimals: number, f: Figures): string {
  const { north, south } = f.words.sheets.map.frame;
  return y === 0 ? '0' : (y > 0 ? north : south)({ figure: fixed(Math.abs(y), decimals) });
}
