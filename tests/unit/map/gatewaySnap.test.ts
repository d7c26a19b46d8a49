import { describe, expect, it } from 'vitest';
import { message } from '../../../core/words/message.ts';
import { gatewayStations, snapGateway } from '../../../renderer/map/interaction/gatewaySnap.ts';
import { inEnglish } from '../../support/english.ts';

const landmarks = [
  { atM: 0, spot: message('window.map.spots.lineStarts', { name: 'F1' }) },
  { atM: 40, spot: message('window.map.spots.post', { name: 'P1' }) },
  { atM: 100, spot: message('window.map.spots.lineEnds', { name: 'F1' }) },
];

describe('where a gateway sits well', () => {
  it('is beside a landmark, hung from the post that stands there, or halfway between two', () => {
    const stations = gatewayStations(landmarks, [], 4, 100);
    expect(stations.map(({ spot, ...rest }) => ({ ...rest, text: inEnglish(spot) }))).toEqual([
      { atM: 2, text: 'beside the start of F1', hungFrom: 'start' },
      { atM: 20, text: 'halfway from the start of F1 to post P1', hungFrom: 'start' },
      { atM: 38, text: 'beside post P1', hungFrom: 'end' },
      { atM: 42, text: 'beside post P1', hungFrom: 'start' },
      { atM: 70, text: 'halfway from post P1 to the end of F1', hungFrom: 'start' },
      { atM: 98, text: 'beside the end of F1', hungFrom: 'end' },
    ]);
  });

  it('is clear of the openings that are there', () => {
    const stations = gatewayStations(landmarks, [{ fromM: 36, toM: 44 }], 4, 100);
    expect(stations.map(({ atM }) => atM)).toEqual([2, 20, 70, 98]);
  });

  it('is nowhere on a line shorter than the gateway', () => {
    const ends = [
      { atM: 0, spot: message('window.map.spots.ownStart') },
      { atM: 3, spot: message('window.map.spots.ownStart') },
    ];
    expect(gatewayStations(ends, [], 4, 3)).toEqual([]);
  });
});

describe('snapping a gateway', () => {
  const stations = gatewayStations(landmarks, [], 4, 100);

  it('goes to the nearest station within reach', () => {
    expect(snapGateway(39.5, stations, 3, 4, 100).atM).toBe(38);
    expect(snapGateway(41, stations, 3, 4, 100).atM).toBe(42);
  });

  it('stays where the pointer is when none is near, and on the line', () => {
    expect(snapGateway(30, stations, 3, 4, 100)).toEqual({ atM: 30, spot: null, hungFrom: 'start' });
    expect(snapGateway(99.9, [], 0, 4, 100).atM).toBe(98);
    expect(snapGateway(-5, [], 0, 4, 100).atM).toBe(2);
  });
});
