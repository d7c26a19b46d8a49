import { describe, expect, it } from 'vitest';
import { withAnswer } from '../../../core/locate/inGround/answer.ts';
import { touchedBy } from '../../../core/locate/inGround/touched.ts';
import { difference } from '../../../core/model/difference.ts';
import { moveGateway } from '../../../core/model/edits/moveGateway.ts';
import { moveThing } from '../../../core/model/edits/moveThing.ts';
import type { Edit } from '../../../core/model/edits/support/edit.ts';
import { type Project, put, remove } from '../../../core/model/project.ts';
import { at } from '../../support/drawings.ts';
import { countingIds } from '../../support/ids.ts';
import { recordedDrawing } from '../../support/recordedDrawing.ts';
import { said } from './findings.ts';

const before = recordedDrawing();

function staying(edit: Edit): Project {
  const after = edit(before);
  const touch = touchedBy(before, after, difference(before, after));
  return withAnswer({ before, after, touch, newId: countingIds(9), date: '2026-11-30' }, 'stays');
}

describe('what was recorded where the drawing is no longer', () => {
  it('says nothing of what lies where it is drawn', () => {
    for (const rule of ['recordedElsewhere', 'tiePostMoved', 'recordWithoutCrossing']) {
      expect(said(before, rule)).toEqual([]);
    }
  });

  it('a gate that was moved away from its cable, with how far', () => {
    const moved = staying(moveGateway({ gatewayId: 'G1', atM: 65 }));
    expect(said(moved, 'recordedElsewhere')).toMatchObject([
      { severity: 'warning', message: expect.stringContaining('up to 15.0 m from there'), thingIds: ['X-G1', 'G1'] },
    ]);
    expect(said(moved, 'tiePostMoved')).toEqual([]);
  });

  it('a post that was moved after tapes were held to it', () => {
    const moved = staying(moveThing({ kind: 'post', id: 'P1', to: at([45, 7]) }));
    expect(said(moved, 'tiePostMoved')).toMatchObject([
      {
        message: 'Post P1 is drawn 1.00 m from where it stood when the bend was taped from it.',
        remedy: expect.stringContaining('count from where it stood'),
      },
    ]);
  });

  it('records that an earlier version left behind without their crossing', () => {
    const orphaned = remove(before, before.crossing.get('X-G1')!);
    const above = put(before, { ...before.crossing.get('X-G1')!, method: 'overhead' });
    for (const project of [orphaned, above]) {
      expect(said(project, 'recordWithoutCrossing')).toMatchObject([
        {
          message: expect.stringMatching(/^3 measured points of a buried crossing that is drawn no longer, taped from/),
        },
      ]);
    }
  });
});
