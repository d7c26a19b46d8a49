import { describe, expect, it } from 'vitest';
import { distanceM } from '../../../core/geometry/geodesic.ts';
import type { MapInput } from '../../../renderer/map/mapTypes.ts';
import { createChooseTool } from '../../../renderer/map/tools/choose/chooseTool.ts';
import { exampleContext, exampleScene, key, pointer } from './support.ts';

const scene = exampleScene();
const { project } = scene;

function begin(change: Partial<MapInput>) {
  const example = exampleContext(scene, change);
  return { ...example, tool: createChooseTool(example.context) };
}

describe('choosing', () => {
  it('chooses what is clicked, and nothing on open ground outside', () => {
    const { tool, chosen } = begin({});
    tool.click(pointer(100, 60));
    tool.click(pointer(-80, -80));
    expect(chosen).toEqual([['F2'], []]);
  });

  it('chooses the section first where sections are shown', () => {
    const { tool, chosen } = begin({ workspace: 'divide' });
    tool.click(pointer(100, 60));
    expect(chosen[0]![0]).toMatch(/^section:/);
  });

  it('chooses all that lies within a box', () => {
    const { tool, chosen } = begin({});
    expect(tool.press!(pointer(90, -10, { shift: true }))).toBe(true);
    tool.drag!(pointer(110, 210));
    tool.release!(pointer(110, 210), true);
    expect(chosen[0]!.toSorted()).toEqual(['F2', 'P1']);
  });

  it('lets the map pan where there is nothing to take hold of', () => {
    expect(begin({ chosen: ['F2'] }).tool.press!(pointer(50, 50))).toBe(false);
  });
});

describe('dragging', () => {
  it('moves a corner of the chosen line, with what is joined to it', async () => {
    const { tool, made } = begin({ chosen: ['F2'] });
    expect(tool.press!(pointer(100, 200))).toBe(true);
    tool.drag!(pointer(120, 230));
    tool.release!(pointer(120, 230), true);
    await Promise.resolve();
    const path = made[0]!.apply(project).fenceLine.get('F2')!.path;
    expect(distanceM(path[1]!, scene.plane.toLonLat([120, 230]))).toBeLessThan(0.001);
  });

  it('pulls a new corner out of the middle of a segment', async () => {
    const { tool, made } = begin({ chosen: ['F2'] });
    expect(tool.press!(pointer(100, 100))).toBe(true);
    tool.drag!(pointer(130, 100));
    tool.release!(pointer(130, 100), true);
    await Promise.resolve();
    expect(made[0]!.apply(project).fenceLine.get('F2')!.path).toHaveLength(3);
  });

  it('slides a gateway along its line', async () => {
    const { tool, made } = begin({ chosen: ['G1'] });
    expect(tool.press!(pointer(50, 0))).toBe(true);
    tool.drag!(pointer(71, 12));
    tool.release!(pointer(71, 12), true);
    await Promise.resolve();
    expect(made[0]!.apply(project).gateway.get('G1')!.atM).toBeCloseTo(71, 3);
  });

  it('changes no lines outside Draw', () => {
    expect(begin({ chosen: ['F2'], workspace: 'record' }).tool.press!(pointer(100, 200))).toBe(false);
  });
});

describe('working on corners with keys', () => {
  it('steps through them and then lets the key go on', () => {
    const { tool } = begin({ chosen: ['F2'] });
    expect([1, 2, 3, 4].map(() => tool.key(key('Tab')))).toEqual([true, true, false, true]);
    expect(begin({ chosen: [] }).tool.key(key('Tab'))).toBe(false);
  });

  it('moves one by 0.1 m, or with Shift by 1 m, as one step of undo', () => {
    const { tool, made } = begin({ chosen: ['F2'] });
    tool.key(key('Tab'));
    expect(tool.key(key('ArrowUp'))).toBe(true);
    expect(tool.key(key('ArrowRight', { shiftKey: true }))).toBe(true);
    const from = project.fenceLine.get('F2')!.path[0]!;
    const once = made[0]!.apply(project).fenceLine.get('F2')!.path[0]!;
    const twice = made[1]!.apply(made[0]!.apply(project)).fenceLine.get('F2')!.path[0]!;
    expect(distanceM(from, once)).toBeCloseTo(0.1, 6);
    expect(distanceM(once, twice)).toBeCloseTo(1, 6);
    expect(made[0]!.mergeKey).toBe(made[1]!.mergeKey);
  });

  it('moves a chosen gateway along its line', () => {
    const { tool, made } = begin({ chosen: ['G1'] });
    tool.key(key('ArrowRight', { shiftKey: true }));
    expect(made[0]!.apply(project).gateway.get('G1')!.atM).toBeCloseTo(51, 9);
  });

  it('puts one in and takes one out', () => {
    const { tool, made } = begin({ chosen: ['F1'] });
    tool.key(key('Tab'));
    tool.key(key('Tab'));
    tool.key(key('Insert'));
    expect(made[0]!.apply(project).fenceLine.get('F1')!.path).toHaveLength(6);
    tool.key(key('Delete'));
    expect(made[1]!.apply(project).fenceLine.get('F1')!.path).toHaveLength(4);
  });

  it('leaves what is chosen with Escape, step by step', () => {
    const { tool, chosen } = begin({ chosen: ['F2'] });
    tool.key(key('Tab'));
    expect(tool.cancel()).toBe(true);
    expect(chosen).toEqual([]);
    expect(tool.cancel()).toBe(true);
    expect(chosen).toEqual([[]]);
  });
});
