import { EARTH_TEST_GOOD_V } from '../../electrical/earth/earthTest.ts';
import { multipleRodSource } from '../../electrical/earth/multipleRodFactor.ts';
import { rodsForTarget } from '../../electrical/earth/rodsForTarget.ts';
import { rodsByRuleOfThumb } from '../../electrical/earth/ruleOfThumb.ts';
import { spacingRemark } from '../../electrical/earth/spacingRemark.ts';
import { propertyOf } from '../../model/project.ts';
import type { EarthField, Energiser } from '../../model/things.ts';
import { type Message, message } from '../../words/message.ts';
import type { Power, Supply } from './types.ts';

/** One earth field by the formulas, with what is to be said about it. */
export interface EarthFigures {
  readonly field: EarthField;
  readonly ohm: number;
  readonly singleRodOhm: number;
  readonly remarks: readonly Message[];
}

/** The fields of one supply. */
export function earthFigures({ earth }: Supply): EarthFigures[] {
  return earth.fields.map(({ field, estimate }) => {
    const { rods, rodLengthM, spacingM } = field;
    const spacing = spacingRemark(rods, rodLengthM, spacingM);
    const said = { source: multipleRodSource, rods };
    const coverage =
      estimate.coverage === 'table'
        ? []
        : estimate.coverage === 'between'
          ? [message('power.earth.betweenFactors', said)]
          : [message('power.earth.beyondFactors', said)];
    return {
      field,
      ohm: estimate.ohm,
      singleRodOhm: estimate.singleRodOhm,
      remarks: [...(spacing ? [spacing] : []), ...coverage],
    };
  });
}

/**
 * The resistance at which an earth test would read `EARTH_TEST_GOOD_V`: the fence shorted dead, the current V0 / (Rs + R)
 * and the field's own rise R times that. So R = Rs Vgood / (V0 - Vgood). An estimate: the test itself decides.
 */
export function earthTargetOhm({ openCircuitV }: Energiser, internalOhm: number): number {
  return (internalOhm * EARTH_TEST_GOOD_V) / (openCircuitV - EARTH_TEST_GOOD_V);
}

/** How many rods like the field's come down to a target; null when no number in the tables does. */
export function rodsNeeded(
  { project }: Power,
  field: EarthField,
  targetOhm: number,
): { rods: number; ohm: number } | null {
  return rodsForTarget(field, propertyOf(project).power.soilOhmM, targetOhm);
}

/** By the published rule of thumb; null where the output is not entered. */
export function ruleOfThumb({ outputJ }: Energiser, field: EarthField): { rodInGroundM: number; rods: number } | null {
  return outputJ === null ? null : rodsByRuleOfThumb(outputJ, field.rodLengthM);
}
