import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type PlaceKey, parsePlaceKey, placeKeyText } from '../../../core/model/placeKey.ts';

describe('the key of a place for a switch', () => {
  it.each<[string, PlaceKey]>([
    ['gateway:gateway-1', { on: 'gateway', gatewayId: 'gateway-1' }],
    ['takeOff:fenceLine-1:start', { on: 'takeOff', lineId: 'fenceLine-1', end: 'start' }],
    ['strainer:post-1:fenceLine-1', { on: 'strainerPost', postId: 'post-1', lineId: 'fenceLine-1' }],
    ['strainer:fenceLine-1:12', { on: 'corner', lineId: 'fenceLine-1', vertex: 12 }],
    ['place:switchCandidate-1', { on: 'added', candidateId: 'switchCandidate-1' }],
    ['switch:switch-1', { on: 'switch', switchId: 'switch-1' }],
  ])('%s, as files have always kept it', (text, key) => {
    expect(parsePlaceKey(text)).toEqual(key);
    expect(placeKeyText(key)).toBe(text);
  });

  it('comes back from its text whatever the ids are', () => {
    const id = fc.oneof(fc.string({ minLength: 1, maxLength: 12 }), fc.stringMatching(/^[0-9:%]{1,4}$/));
    const key: fc.Arbitrary<PlaceKey> = fc.oneof(
      fc.record({ on: fc.constant('gateway' as const), gatewayId: id }),
      fc.record({
        on: fc.constant('takeOff' as const),
        lineId: id,
        end: fc.constantFrom('start' as const, 'end' as const),
      }),
      fc.record({ on: fc.constant('strainerPost' as const), postId: id, lineId: id }),
      fc.record({ on: fc.constant('corner' as const), lineId: id, vertex: fc.nat() }),
      fc.record({ on: fc.constant('added' as const), candidateId: id }),
      fc.record({ on: fc.constant('switch' as const), switchId: id }),
    );
    fc.assert(
      fc.property(key, (one) => {
        expect(parsePlaceKey(placeKeyText(one))).toEqual(one);
      }),
      { seed: 1, numRuns: 2000 },
    );
  });

  it.each(['', 'gateway', 'gateway:', 'takeOff:a:middle', 'strainer:a', 'strainer:a:', 'strainer:a:b:c', 'hill:a'])(
    '“%s” is none',
    (text) => expect(parsePlaceKey(text)).toBeNull(),
  );
});
