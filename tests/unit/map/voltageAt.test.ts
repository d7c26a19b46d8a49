import { describe, expect, it } from 'vitest';
import type { MapInput, VoltageShading } from '../../../renderer/map/mapTypes.ts';
import { voltageAt } from '../../../renderer/map/tools/choose/voltageAt.ts';
import { exampleContext, exampleScene } from './support.ts';

const scene = exampleScene();
const shape = [...scene.survey.lines.values()].find(({ line }) => line.live)!;
const middle = shape.xy[0]!;
const shading = (volts: number | null): VoltageShading => ({
  ofEdge: () => null,
  along: () => volts,
  openSwitchIds: new Set(),
  maxV: 8000,
  minimumV: 4000,
});
const at = (voltage: MapInput['voltage'], xy = middle) =>
  voltageAt(scene, exampleContext(scene, { voltage }).context.input(), xy, 2);

describe('what the fence under the pointer reads', () => {
  const { name } = shape.line;

  it('is said with its unit, and that it is an estimate', () => {
    expect(at(shading(5230))).toBe(`${name}: about 5.2 kV here (estimate).`);
    expect(at(shading(3100))).toBe(`${name}: about 3.1 kV here (estimate), under the 4.0 kV that hold the stock.`);
  });

  it('is 0 where it is dead, and not known where it is not', () => {
    expect(at(shading(0))).toBe(`${name}: dead, 0 V.`);
    expect(at(shading(null))).toBe(`${name}: the voltage is not known.`);
  });

  it('is nothing away from the fence, or where no voltages are shown', () => {
    expect(at(shading(5000), [99_999, 99_999])).toBeNull();
    expect(at(null)).toBeNull();
  });
});
