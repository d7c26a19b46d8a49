import type { Box } from '../../geometry/plane/box.ts';
import { type Project, propertyOf } from '../../model/project.ts';
import type { Survey } from '../../registers/types.ts';
import type { Item } from '../displayList.ts';
import type { LabelPlace } from '../labels/label.ts';
import { placeLabels } from '../labels/placeLabels.ts';
import { line, stroke } from '../paint.ts';
import { pen } from '../style.ts';
import type { MeasureText } from '../words.ts';
import { gridLayer } from './drawGrid.ts';
import { fenceLayer } from './fenceLayer.ts';
import { mergeLayers } from './layer.ts';
import type { MapWindow } from './mapWindow.ts';
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
}

/** The map of a window: services below, fences, signs, labels on top. */
export function drawMap(
  project: Project,
  survey: Survey,
  window: MapWindow,
  ground: Box,
  gridM: number,
  measure: MeasureText,
): DrawnMap {
  const { units } = propertyOf(project);
  const below = mergeLayers([
    gridLayer(window, ground, gridM),
    serviceLayer(project, window, measure),
    fenceLayer(survey, window, measure),
    leadOutLayer(project, window),
  ]);
  const signs = mergeLayers([openingLayer(survey, window, units, measure), supplyLayer(project, window, measure)]);
  const all = mergeLayers([
    below,
    postLayer(project, window, measure),
    signs,
    switchLayer(survey, window, signs.signs, measure),
    paddockLayer(survey, window, units, measure),
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
    unlabelled: [...new Set(names)].sort((a, b) => a.localeCompare(b, 'en', { numeric: true })),
  };
}

function drawLabel({ texts, leader }: LabelPlace): Item[] {
  return leader ? [line(leader, stroke(pen.hairline)), ...texts] : [...texts];
}
