import { describe, expect, it } from 'vitest';
import { message } from '../../../core/words/message.ts';
import { chooseSnap, type SnapKind, type SnapTarget } from '../../../renderer/map/interaction/snapping.ts';

const target = (kind: SnapKind, x: number, y: number): SnapTarget => ({
  kind,
  xy: [x, y],
  lonLat: [0, 0],
  spot: message('window.map.spots.post', { name: `${kind} ${x},${y}` }),
  lineId: null,
});

describe('what the pointer snaps to', () => {
  it('takes nothing out of reach', () => {
    expect(chooseSnap([0, 0], [target('post', 3, 0)], 2.9)).toBeNull();
    expect(chooseSnap([0, 0], [], 5)).toBeNull();
  });

  it('takes a point before a line, even where the line is nearer', () => {
    const post = target('post', 2, 0);
    expect(chooseSnap([0, 0], [target('line', 0.1, 0), post], 3)).toBe(post);
  });

  it('takes the line where no point is within reach', () => {
    const line = target('line', 0.1, 0);
    expect(chooseSnap([0, 0], [target('post', 4, 0), line], 3)).toBe(line);
  });

  it('takes the nearest of several points, whatever they are', () => {
    const vertex = target('vertex', 1, 0);
    expect(chooseSnap([0, 0], [target('post', 2, 0), vertex], 3)).toBe(vertex);
  });

  it('names the firmest of the things at one place', () => {
    const post = target('post', 1.01, 0);
    const end = target('lineEnd', 1, 0);
    const corner = target('vertex', 1, 0.01);
    for (const order of [
      [post, end, corner],
      [corner, end, post],
      [end, post, corner],
    ]) {
      expect(chooseSnap([0, 0], order, 3)).toBe(post);
    }
    expect(chooseSnap([0, 0], [corner, end], 3)).toBe(end);
  });
});
