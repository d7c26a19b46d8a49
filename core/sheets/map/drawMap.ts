import type { Item } from '../../drawing/displayList.ts';
import type { LabelPlace } from '../../drawing/labels/label.ts';
import { placeLabels } from '../../drawing/labels/placeLabels.ts';
import type { MapWindow } from '../../drawing/mapWindow.ts';
import { line, stroke } from '../../drawing/paint.ts';
import { pen } from '../../drawing/style.ts';
import type { MeasureText } from '../../drawing/words.ts';
import type { Box } from '../../geometry/box.ts';
import type { Project } from '../../model/project.ts';
import type { Survey } from '../../survey/types.ts';
import { inOrder } from '../../words/text.ts';
import type { Figures } from '../../words/types.ts';
import { gridLayer } from './drawGrid.ts';
import { fenceLayer } from './fenceLayer.ts';
import { inGroundLayer } from './inGroundLayer.ts';
import { mergeLayers } from './layer.ts';
import { openingLayer } from './openingLayer.ts';
import { paddockLayer } from './paddockLayer.ts';
import { postLayer } from './postLayer.ts';
import { serviceLayer } from './serviceLayer.ts';
import { leadOutLayer, supplyLayer } from './supplyLayer.ts';
import { switchLayer } from './switchLayer.ts';

export interface DrawnMap {
  /** Everything inside the map's frame, clipped to it. */
  readonly items: readonly Item[];
  /** Names that found no room on the map, sorted. */
  readonly unlabelled: readonly string[];
  /** Nothing of the property lies here. */
  readonly blank: boolean;
}

/** The map of a window: services below, fences, signs, labels on top. */
export function drawMap(
  project: Project,
  survey: Survey,
  window: MapWindow,
  ground: Box,
  gridM: number,
  f: Figures,
  measure: MeasureText,
): DrawnMap {
  const grid = gridLayer(window, ground, gridM);
  const below = mergeLayers([
    grid,
    serviceLayer(project, window, f, measure),
    fenceLayer(survey, window, f, measure),
    leadOutLayer(project, window),
    inGroundLayer(project, survey, window, f, measure),
  ]);
  const signs = mergeLayers([openingLayer(project, survey, window, f, measure), supplyLayer(project, window, measure)]);
  const all = mergeLayers([
    below,
    postLayer(project, window, measure),
    signs,
    switchLayer(survey, window, signs.signs, measure),
    paddockLayer(survey, window, f, measure),
  ]);
  const { placed, without } = placeLabels(all.labels, {
    frame: window.frame,
    signs: all.signs,
    lines: all.lines,
    measure,
  });
  const names = without.flatMap(({ listedAs }) => listedAs ?? []);
  return {
    items: [
      {
        kind: 'clip',
        box: window.frame,
        items: [...all.items, ...placed.flatMap(drawLabel)],
      },
    ],
    unlabelled: inOrder([...new Set(names)]),
    blank: all.items.length === grid.items.length && all.labels.length === 0,
  };
}

function drawLabel({ texts, leader }: LabelPlace): Item[] {
  return leader ? [line(leader, stroke(pen.hairline)), ...texts] : [...texts];
}
