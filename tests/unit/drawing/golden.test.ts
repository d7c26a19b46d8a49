import { describe, expect, it } from 'vitest';
import { mapWindow } from '../../../core/drawing/mapWindow.ts';
import { paletteOf } from '../../../core/drawing/palette.ts';
import { paperPen } from '../../../core/drawing/pen.ts';
import type { Xy } from '../../../core/geometry/types.ts';
import { projectOf } from '../../../core/model/project.ts';
import { drawMap } from '../../../core/sheets/map/drawMap.ts';
import { surveyOf } from '../../../core/survey/survey.ts';
import { figures } from '../../../core/words/figures.ts';
import type { MapInput } from '../../../renderer/map/mapTypes.ts';
import { signPen } from '../../../renderer/map/plane/screenPen.ts';
import { buildScene } from '../../../renderer/map/scene/buildScene.ts';
import { lookOf } from '../../../renderer/map/staticLayer/look.ts';
import { drawStatic } from '../../../renderer/map/staticLayer/paintStatic.ts';
import { displayListText } from '../../support/displayListText.ts';
import { inventedThings } from '../sheets/inventedProperty.ts';
import { plainMeasure } from '../sheets/plainMeasure.ts';
import { symbols } from './symbols.ts';

// What a symbol or a map looks like, as reviewed text. After a change that is meant: `npm run golden`, and read the
// difference in `golden/` before it is committed.

describe.each(Object.keys(symbols))('the symbols of %s', (name) => {
  it('look as they did', async () => {
    const pens = { 'on paper, mm': paperPen, 'on a light screen, near, px': signPen(0.1, paletteOf('light')) };
    const text = Object.entries(pens).map(([where, pen]) => {
      const drawn = Object.entries(symbols[name]!).map(
        ([state, draw]) => `# ${state}\n${displayListText(draw(pen), pen === paperPen ? 2 : 1)}`,
      );
      return `## ${name} ${where}\n\n${drawn.join('\n')}`;
    });
    await expect(text.join('\n')).toMatchFileSnapshot(`golden/${name}.txt`);
  });
});

const project = projectOf(inventedThings(2));
const survey = surveyOf(project);

describe('the map of a small invented property', () => {
  it.each([
    { scale: 10_000, centre: [0, 240] as Xy, frame: [0, 0, 150, 70] as const, gridM: 500 },
    { scale: 500, centre: [6, 30] as Xy, frame: [0, 0, 80, 60] as const, gridM: 20 },
  ])('looks as it did on paper at 1:$scale', async ({ scale, centre, frame, gridM }) => {
    const window = mapWindow(frame, centre, scale, survey.plane);
    const [w, h] = [(frame[2] * scale) / 2000, (frame[3] * scale) / 2000];
    const ground = [centre[0] - w, centre[1] - h, centre[0] + w, centre[1] + h] as const;
    const { items } = drawMap(project, survey, window, ground, gridM, figures('metric'), plainMeasure);
    await expect(displayListText(items, 2)).toMatchFileSnapshot(`golden/map-paper-${scale}.txt`);
  });

  it.each([
    { name: 'far', pxPerM: 0.6, centre: [0, 240] as Xy, workspace: 'divide' as const },
    { name: 'near', pxPerM: 12, centre: [6, 30] as Xy, workspace: 'draw' as const },
  ])('looks as it did on the screen, $name', async ({ name, pxPerM, centre, workspace }) => {
    const view = {
      westM: centre[0] - 500 / pxPerM,
      northM: centre[1] + 300 / pxPerM,
      pxPerM,
      widthPx: 1000,
      heightPx: 600,
    };
    const input: MapInput = {
      project,
      survey,
      findings: [],
      workspace,
      chosen: [],
      pointed: null,
      lit: [],
      plan: null,
      voltage: null,
      units: 'metric',
      theme: 'light',
    };
    const scene = buildScene(project, survey, survey.plane);
    const look = lookOf(view, scene, input, paletteOf('light'), (text) => text.length * 8);
    const items = [...drawStatic(look)].flat();
    await expect(displayListText(items, 1)).toMatchFileSnapshot(`golden/map-screen-${name}.txt`);
  });
});
