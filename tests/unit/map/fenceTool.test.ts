import { describe, expect, it } from 'vitest';
import { bearingDeg, distanceM } from '../../../core/geometry/geodesic.ts';
import { createFenceTool } from '../../../renderer/map/tools/fenceTool.ts';
import { inEnglish } from '../../support/english.ts';
import { exampleContext, exampleScene, key, pointer } from './support.ts';

const scene = exampleScene();

function begin() {
  const example = exampleContext(scene);
  return { ...example, tool: createFenceTool(example.context) };
}

/** The path of the one line that the edit draws. */
function drawn({ made }: ReturnType<typeof begin>) {
  const before = new Set(scene.project.fenceLine.keys());
  const lines = [...made[0]!.apply(scene.project).fenceLine.values()].filter(({ id }) => !before.has(id));
  expect(lines).toHaveLength(1);
  return lines[0]!;
}

describe('drawing a fence', () => {
  it('begins exactly on what it snaps to', async () => {
    const fence = begin();
    fence.tool.click(pointer(102, 3));
    fence.tool.click(pointer(140, 60));
    expect(fence.tool.key(key('Enter'))).toBe(true);
    await Promise.resolve();
    const { path, id } = drawn(fence);
    expect(path[0]).toBe(scene.project.post.get('P1')!.at);
    expect(path).toHaveLength(2);
    expect(fence.made[0]!.choose).toEqual([id]);
  });

  it('takes typed lengths and true bearings', async () => {
    const fence = begin();
    fence.tool.click(pointer(-100, -100));
    expect(fence.tool.typed!('125', '92.5')).toBe(true);
    expect(fence.tool.typed!('40 @ 180', '')).toBe(true);
    // Enter in empty fields ends the line.
    expect(fence.tool.typed!('', '')).toBe(true);
    await Promise.resolve();
    const [a, b, c] = drawn(fence).path;
    expect(distanceM(a!, b!)).toBeCloseTo(125, 6);
    expect(bearingDeg(a!, b!)).toBeCloseTo(92.5, 6);
    expect(distanceM(b!, c!)).toBeCloseTo(40, 6);
    expect(bearingDeg(b!, c!)).toBeCloseTo(180, 6);
  });

  it('points the way where only a length is typed', () => {
    const fence = begin();
    fence.tool.click(pointer(-100, -100));
    fence.tool.move(pointer(-100, -50));
    expect(fence.tool.typed!('10', '')).toBe(true);
    expect(fence.tool.progress().totalM).toBeGreaterThan(9.999);
    expect(fence.tool.lastPoint!()![1]).toBeCloseTo(-90, 4);
  });

  it('says what is missing or wrong, and sets nothing', () => {
    const fence = begin();
    expect(fence.tool.typed!('10', '90')).toBe(false);
    fence.tool.click(pointer(-100, -100));
    expect(fence.tool.typed!('ten', '90')).toBe(false);
    expect(fence.tool.typed!('10', 'east')).toBe(false);
    expect(fence.tool.typed!('10', '')).toBe(false);
    expect(fence.refused).toHaveLength(4);
    expect(fence.tool.key(key('Enter'))).toBe(true);
    expect(fence.made).toEqual([]);
  });

  it('holds to 15 degrees with Shift and lets go of snapping with Alt', () => {
    const fence = begin();
    fence.tool.click(pointer(-100, -100));
    fence.tool.move(pointer(-60, -98, { shift: true }));
    expect(fence.tool.progress().bearingDeg).toBeCloseTo(90, 6);
    fence.tool.move(pointer(101, 1));
    expect(inEnglish(fence.tool.progress().snappedTo)).toBe('at post P1');
    fence.tool.move(pointer(101, 1, { alt: true }));
    expect(fence.tool.progress().snappedTo).toBeNull();
  });

  it('takes points back one by one, and gives up with nothing made', () => {
    const fence = begin();
    fence.tool.click(pointer(-100, -100));
    fence.tool.click(pointer(-50, -100));
    expect(fence.tool.key(key('Backspace'))).toBe(true);
    expect(fence.tool.lastPoint!()![0]).toBeCloseTo(-100, 6);
    expect(fence.tool.takeBack!()).toBe(true);
    expect(fence.tool.takeBack!()).toBe(false);
    expect(fence.tool.cancel()).toBe(false);
    fence.tool.click(pointer(-100, -100));
    expect(fence.tool.cancel()).toBe(true);
    expect(fence.made).toEqual([]);
  });

  it('closes on its own beginning', async () => {
    const fence = begin();
    fence.tool.click(pointer(-100, -100));
    fence.tool.click(pointer(-50, -100));
    fence.tool.click(pointer(-50, -50));
    fence.tool.click(pointer(-99, -98));
    await Promise.resolve();
    const { path } = drawn(fence);
    expect(path).toHaveLength(4);
    expect(path.at(-1)).toEqual(path[0]);
  });

  it('is made once by a double click', async () => {
    const fence = begin();
    fence.tool.click(pointer(-100, -100));
    fence.tool.click(pointer(-50, -100));
    fence.tool.click(pointer(-50, -100));
    fence.tool.doubleClick!(pointer(-50, -100));
    fence.tool.doubleClick!(pointer(-50, -100));
    await Promise.resolve();
    expect(drawn(fence).path).toHaveLength(2);
    expect(fence.made).toHaveLength(1);
  });
});
