import type { Item } from '../../drawing/displayList.ts';
import { text } from '../../drawing/paint.ts';
import { drawFence, sectionMarks } from '../../drawing/strokes/fence.ts';
import { letters, pen } from '../../drawing/style.ts';
import type { Section } from '../../survey/types.ts';
import type { Figures } from '../../words/types.ts';
import { type Block, baselineIn } from '../flow/block.ts';

const rowMm = 4;

/** Two sections to a row: letter, marks, length of fence. */
export function sectionRows(sections: readonly Section[], widthMm: number, f: Figures): Block[] {
  const half = widthMm / 2;
  const rows: Block[] = [];
  for (let i = 0; i < sections.length; i += 2) {
    rows.push({
      heightMm: rowMm,
      paint: ([x, y]) => sections.slice(i, i + 2).flatMap((section, k) => sectionCell(section, x + k * half, y, f)),
    });
  }
  return rows;
}

function sectionCell(section: Section, x: number, y: number, f: Figures): Item[] {
  const baseline = baselineIn(y, rowMm, letters.panel);
  return [
    text(section.letter, [x, baseline], { sizePt: letters.panel + 0.5, font: 'bold' }),
    ...drawFence(
      [
        [x + 4.5, y + rowMm / 2],
        [x + 14.5, y + rowMm / 2],
      ],
      'built',
      pen.sign,
      sectionMarks(section.index),
    ),
    text(f.length(section.lengthM), [x + 16, baseline], { sizePt: letters.panel, font: 'figures' }),
  ];
}
