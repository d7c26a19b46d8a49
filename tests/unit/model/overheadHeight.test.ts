import { describe, expect, it } from 'vitest';
import { crossingDefaults } from '../../../core/model/defaults.ts';
import { heightWhenMade, leastOverheadHeightM } from '../../../core/model/overheadHeight.ts';

const risers = { riserHeightM: crossingDefaults.riserHeightM };

describe('the height of a crossing that goes another way past its gateway', () => {
  it('is no riser once it hangs overhead: what passes below has room', () => {
    for (const vehicles of [false, true]) {
      expect(heightWhenMade('overhead', risers, { vehicles }, crossingDefaults)).toBe(
        leastOverheadHeightM({ vehicles }),
      );
      expect(heightWhenMade('overhead', { riserHeightM: 6 }, { vehicles }, crossingDefaults)).toBe(6);
    }
  });

  it('is a riser again once it is buried', () => {
    for (const riserHeightM of [2.5, 4.5, 10]) {
      const again = heightWhenMade('buried', { riserHeightM }, { vehicles: riserHeightM > 4 }, crossingDefaults);
      expect(again).toBe(crossingDefaults.riserHeightM);
    }
    expect(heightWhenMade('buried', { riserHeightM: 1.3 }, { vehicles: false }, crossingDefaults)).toBe(1.3);
  });
});
