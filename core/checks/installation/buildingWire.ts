import { isBuildingWire } from '../../electrical/conductors/fenceCable.ts';
import { changeThing } from '../../model/edits/changeThing.ts';
import { refTo } from '../../model/refTo.ts';
import type { Crossing, Gateway, LeadOut, LonLat } from '../../model/things.ts';
import { message } from '../../words/message.ts';
import type { Fix, Found } from '../finding.ts';
import type { Check } from '../support/context.ts';
import { finding } from '../support/make.ts';

const fenceCableId = 'cable-steel-2.5';

/** A live cable that is a size of building wire: older files could name it. It computes as entered, and is not changed by itself. */
export const buildingWire: Check = ({ project, survey }) => [
  ...[...project.crossing.values()].flatMap((crossing) => {
    const gateway = project.gateway.get(crossing.gatewayId);
    if (!gateway) return [];
    const at = survey.gateways.get(gateway.id)?.startPostAt ?? null;
    return said(crossing, gateway, [crossing.id, gateway.id], at);
  }),
  ...[...project.leadOut.values()].flatMap((leadOut) => said(leadOut, leadOut, [leadOut.id], leadOut.path[0] ?? null)),
];

function said(
  thing: Crossing | LeadOut,
  called: Gateway | LeadOut,
  ids: readonly string[],
  at: LonLat | null,
): Found[] {
  const { kind, id, cableId, status } = thing;
  if (!isBuildingWire(cableId)) return [];
  const fix: Fix = {
    label: message('checks.buildingWire.fix'),
    edit: changeThing({ kind, id, to: { cableId: fenceCableId } }),
  };
  const planned = status === 'planned';
  return [
    finding('buildingWire', 'warning', ids, {
      message: message('checks.buildingWire.message', { thing: refTo(called) }),
      remedy: message(planned ? 'checks.buildingWire.plannedRemedy' : 'checks.buildingWire.builtRemedy'),
      source: message('checks.buildingWire.source'),
      at,
      fixes: planned ? [fix] : [],
    }),
  ];
}
