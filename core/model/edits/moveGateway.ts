import { put } from '../project.ts';
import { type Edit, firstRefusal, guarded, type WhyNot } from './support/edit.ts';
import { found, whyNotFound } from './support/find.ts';
import { whyNotOpening } from './support/openings.ts';

export interface MoveGateway {
  readonly gatewayId: string;
  readonly atM: number;
  /** Another line to stand in; without it, the same. */
  readonly lineId?: string;
}

/** Moves a gateway, with its crossing and its switches, along its line or into another. */
export function moveGateway(wanted: MoveGateway): Edit {
  return guarded(whyNotMoveGateway(wanted), (project) => {
    const gateway = found(project, 'gateway', wanted.gatewayId);
    return put(project, { ...gateway, atM: wanted.atM, lineId: wanted.lineId ?? gateway.lineId });
  });
}

/** `notFound`, and what `whyNotOpening` refuses. */
export function whyNotMoveGateway({ gatewayId, atM, lineId }: MoveGateway): WhyNot {
  return (project) =>
    firstRefusal(
      () => whyNotFound(project, 'gateway', gatewayId),
      () => (lineId === undefined ? null : whyNotFound(project, 'fenceLine', lineId)),
      () => {
        const gateway = found(project, 'gateway', gatewayId);
        const line = found(project, 'fenceLine', lineId ?? gateway.lineId);
        return whyNotOpening(project, line, { atM, widthM: gateway.widthM, except: gatewayId });
      },
    );
}
