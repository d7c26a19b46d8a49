import { describe, expect, it } from 'vitest';
import { setGrowth, whyNotSetGrowth } from '../../../../core/model/edits/setGrowth.ts';
import { drawing, line } from '../../../support/drawings.ts';

const project = drawing(
  line('a', [
    [0, 0],
    [100, 0],
  ]),
  line('b', [
    [0, 50],
    [100, 50],
  ]),
);

describe('growth of several lines at once', () => {
  it('is set on those named, and on no other', () => {
    const after = setGrowth(new Map([['a', { leakageOhmKm: 6250 }]]))(project);
    expect(after.fenceLine.get('a')!.growth).toEqual({ leakageOhmKm: 6250 });
    expect(after.fenceLine.get('b')).toBe(project.fenceLine.get('b'));
  });

  it('is given back to the property with null', () => {
    const own = setGrowth(new Map([['a', 'heavy']]))(project);
    expect(setGrowth(new Map([['a', null]]))(own).fenceLine.get('a')!.growth).toBeNull();
  });

  it('is refused for a line that is gone, and for a leakage of nothing', () => {
    expect(whyNotSetGrowth(new Map([['gone', 'light']]))(project)).toMatchObject({ code: 'notFound' });
    expect(whyNotSetGrowth(new Map([['a', { leakageOhmKm: 0 }]]))(project)).toMatchObject({ code: 'notValid' });
    expect(() => setGrowth(new Map([['gone', 'light']]))(project)).toThrow(/not in the property/);
  });
});
