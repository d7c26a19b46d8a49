import { describe, expect, it } from 'vitest';
import { pick } from '../../../renderer/map/scene/pick.ts';
import { exampleScene } from './support.ts';

const scene = exampleScene();
const idsAt = (x: number, y: number, chosen: string[] = [], pxPerM = 2) =>
  pick(scene, [x, y], pxPerM, chosen).map(({ part }) => part.id);

describe('what lies under the pointer', () => {
  it('is the sign before the lines that meet in it, and the paddock last', () => {
    const ids = idsAt(100, 0.5);
    expect(ids[0]).toBe('P1');
    expect(ids).toContain('F1');
    expect(ids).toContain('F2');
  });

  it('is the nearer of two lines', () => {
    expect(idsAt(96, 100).slice(0, 1)).toEqual(['F2']);
    expect(idsAt(96, 3.5).slice(0, 2)).toEqual(['F1', 'F2']);
    expect(idsAt(96.5, 4).slice(0, 2)).toEqual(['F2', 'F1']);
  });

  it('is what is chosen before anything else there', () => {
    expect(idsAt(100, 0.5, ['F2'])[0]).toBe('F2');
  });

  it('is the gateway within its opening', () => {
    expect(idsAt(50, 0)[0]).toBe('G1');
  });

  it('is only the paddock on open ground, chosen or not', () => {
    const open = pick(scene, [50, 100], 2, []);
    expect(open.map(({ part }) => part.kind)).toEqual(['paddock']);
    expect(pick(scene, [92, 1], 2, [open[0]!.part.id])[0]!.part.id).toBe('F1');
  });

  it('is nothing outside', () => {
    expect(idsAt(-50, -50)).toEqual([]);
  });

  it('depends on the screen, not on the ground', () => {
    expect(idsAt(100, 30, [], 20).slice(0, 1)).toEqual(['F2']);
    expect(idsAt(101, 30, [], 20)).not.toContain('F2');
  });
});
