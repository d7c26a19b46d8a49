import { put } from '../project.ts';
import type { LineEnd } from '../things.ts';
import { type Edit, firstRefusal, guarded, type WhyNot } from './support/edit.ts';
import { found, whyNotFound } from './support/find.ts';
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

/** `notFound`, and what `whyNotOpening` refuses. */
export function whyNotSetGatewayWidth(wanted: SetGatewayWidth): WhyNot {
  return (project) =>
    firstRefusal(
      () => whyNotFound(project, 'gateway', wanted.gatewayId),
      () => {
        const gateway = found(project, 'gateway', wanted.gatewayId);
        const atM = centreM(gateway.atM, gateway.widthM, wanted);
        const line = found(project, 'fenceLine', gateway.lineId);
        return whyNotOpening(project, line, { atM, widthM: wanted.widthM, except: gateway.id });
      },
    );
}

function centreM(atM: number, oldWidthM: number, { widthM, keep }: SetGatewayWidth): number {
  if (keep === undefined) return atM;
  const growthM = (widthM - oldWidthM) / 2;
  return keep === 'start' ? atM + growthM : atM - growthM;
}
