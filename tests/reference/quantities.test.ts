import { describe, expect, it } from 'vitest';
import { orderDefaults } from '../../core/model/orderDefaults.ts';
import { type Project, put } from '../../core/model/project.ts';
import type { FenceType, OrderSettings } from '../../core/model/things.ts';
import { setLabourRate } from '../../core/quantities/edits/changePrices.ts';
import { orderOf } from '../../core/quantities/order/order.ts';
import { priceListOf } from '../../core/quantities/order/priceList.ts';
import { takeOff } from '../../core/quantities/takeOff.ts';
import { surveyOf } from '../../core/survey/survey.ts';
import { drawing, line } from '../support/drawings.ts';

const footM = 0.3048;
const mileM = 1609.344;

/** A straight fence. A hair shorter than asked, so that no whole number of bays is missed by the last bit of a geodesic. */
function straight(lengthM: number, figures: Partial<FenceType>): Project {
  const project = drawing(
    line(
      'F1',
      [
        [0, 0],
        [lengthM - 0.001, 0],
      ],
      { typeId: 'ft-2' },
    ),
  );
  return put(project, { ...project.fenceType.get('ft-2')!, ...figures });
}

function amounts(project: Project, settings: Partial<OrderSettings> = {}) {
  const counted = takeOff({ project, survey: surveyOf(project), settings: { ...orderDefaults, ...settings } });
  return (key: string) => counted.quantities.find((quantity) => quantity.key === key)?.amount ?? 0;
}

/**
 * Iowa State University Extension, FM 1855 "Estimated Costs for Livestock Fencing": materials for a straight quarter
 * mile (1,320 ft), as the farm press printed them with the 2012 prices. Woven wire: posts 12 ft apart, four of 8 in
 * (two for the brace at each end), 57 of 4 in and 55 of steel; 1,320 ft of barbed and 1,320 ft of woven wire.
 */
describe('a quarter mile of fence by Iowa State University Extension FM 1855', () => {
  const lengthM = 1320 * footM;
  const amount = amounts(straight(lengthM, { liveWires: 1, barbedWires: 1, postSpacingM: 12 * footM }), { tieOffM: 0 });

  it('takes as many posts, within the few that braces and spares add', () => {
    const posts = amount('strainer') + amount('post');
    const bracePosts = 2;
    expect(posts).toBe(1320 / 12 + 1);
    expect(posts + bracePosts).toBeGreaterThan((4 + 57 + 55) * 0.96);
    expect(posts + bracePosts).toBeLessThanOrEqual(4 + 57 + 55);
  });

  it('takes as much wire of each sort as it is long', () => {
    expect(amount('barbedWire') / footM).toBeCloseTo(1320, 1);
    expect(amount('wire:steel-2.5') / footM).toBeCloseTo(1320, 1);
  });
});

/**
 * R. Lemus, "Livestock fencing systems for pasture management", part 3, an extension article in the farm press: one
 * in-line tightener for each wire of every quarter mile of straight run.
 */
describe('a mile of five wires by Lemus', () => {
  it('takes four tighteners for each wire', () => {
    expect(amounts(straight(mileM, { liveWires: 5 }), { maxStrainM: 2000 })('tightener')).toBe(5 * 4);
  });
});

/**
 * USDA Agricultural Research Service, grazing manual, section on fences: one mile of five-strand fence at 15 cents a
 * foot is $792.
 */
describe('a mile of fence by the grazing manual of the USDA Agricultural Research Service', () => {
  it('costs as much at the same rate', () => {
    const project = setLabourRate('fenceKm', 0.15 / (footM / 1000))(straight(mileM, { liveWires: 5 }));
    const settings = { ...orderDefaults };
    const order = orderOf({
      project,
      takeOff: takeOff({ project, survey: surveyOf(project) }),
      prices: priceListOf(project),
      settings,
    });
    const pay = order.parts[0]!.labour.find(({ rate }) => rate.per === 'fenceKm')!;
    expect(pay.cost.net).toBeCloseTo(792, 1);
  });
});
