import { type Project, put } from '../project.ts';
import type { LineEnd } from '../things.ts';
import { whyNotAtMost, whyNotFields } from './support/checkFields.ts';
import { type Edit, firstRefusal, guarded, type Refusal, type WhyNot } from './support/edit.ts';
import { crossingOf, found, whyNotFound } from './support/find.ts';
import { whyNotOpening } from './support/openings.ts';

export interface SetGatewayWidth {
  readonly gatewayId: string;
  readonly widthM: number;
  /** The post that stays where it is; without one, the centre stays. */
  readonly keep?: LineEnd;
}

export function setGatewayWidth(wanted: SetGatewayWidth): Edit {
  return guarded(whyNotSetGatewayWidth(wanted), (project) => {
    const gateway = found(project, 'gateway', wanted.gatewayId);
    return put(project, { ...gateway, widthM: wanted.widthM, atM: centreM(gateway.atM, gateway.widthM, wanted) });
  });
}

/** `notFound`, `notValid`, `tooLarge` (the bow of its crossing), and what `whyNotOpening` refuses. */
export function whyNotSetGatewayWidth(wanted: SetGatewayWidth): WhyNot {
  return (project) =>
    firstRefusal(
      () => whyNotFound(project, 'gateway', wanted.gatewayId),
      () => whyNotFields(project, 'gateway', wanted.gatewayId, { widthM: wanted.widthM }),
      () => {
        const gateway = found(project, 'gateway', wanted.gatewayId);
        const atM = centreM(gateway.atM, gateway.widthM, wanted);
        const line = found(project, 'fenceLine', gateway.lineId);
        return whyNotOpening(project, line, { atM, widthM: wanted.widthM, except: gateway.id });
      },
      () => whyNotBow(project, wanted),
    );
}

/** A bow that fits the opening as it is must fit it when it is narrower. */
function whyNotBow(project: Project, { gatewayId, widthM }: SetGatewayWidth): Refusal | null {
  const gateway = found(project, 'gateway', gatewayId);
  const crossing = crossingOf(project, gatewayId);
  if (!crossing || crossing.bowM === null || crossing.bowM > gateway.widthM) return null;
  return whyNotAtMost(put(project, { ...gateway, widthM }), crossing, { bowM: crossing.bowM });
}

function centreM(atM: number, oldWidthM: number, { widthM, keep }: SetGatewayWidth): number {
  if (keep === undefined) return atM;
  const growthM = (widthM - oldWidthM) / 2;
  return keep === 'start' ? atM + growthM : atM - growthM;
}
