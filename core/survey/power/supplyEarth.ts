import { earthFieldOhm } from '../../electrical/earth/earthFieldOhm.ts';
import { type Project, propertyOf } from '../../model/project.ts';
import type { EarthField } from '../../model/things.ts';
import type { SupplyEarth } from './types.ts';

/**
 * The earth stakes of an energiser in the property's soil. Several fields are taken side by side, far enough apart not
 * to share their soil (an assumption). A field whose figures make no rod is passed over.
 */
export function supplyEarth(project: Project, energiserId: string): SupplyEarth {
  const { soilOhmM } = propertyOf(project).power;
  const fields = [...project.earthField.values()]
    .filter((field) => field.energiserId === energiserId && isDriven(field))
    .map((field) => ({ field, estimate: earthFieldOhm(field, soilOhmM) }))
    .filter(({ estimate }) => estimate.ohm > 0 && Number.isFinite(estimate.ohm));
  const siemens = fields.reduce((sum, { estimate }) => sum + 1 / estimate.ohm, 0);
  return { ohm: siemens > 0 ? 1 / siemens : null, fields };
}

function isDriven({ rods, rodLengthM, rodDiameterMm }: EarthField): boolean {
  return Number.isInteger(rods) && rods >= 1 && rodLengthM > 0 && rodDiameterMm > 0;
}
