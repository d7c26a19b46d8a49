import { isBuildingWire } from '../../electrical/conductors/fenceCable.ts';
import { changeThing } from '../../model/edits/changeThing.ts';
import { called } from '../../model/edits/support/find.ts';
import type { Crossing, LeadOut, LonLat } from '../../model/things.ts';
import type { Finding, Fix } from '../finding.ts';
import type { Check } from '../support/context.ts';
import { finding, standard } from '../support/make.ts';

const source = `${standard}: insulated high-voltage cable; 10 kV: common practice, no source`;
const fenceCableId = 'cable-steel-2.5';

/** A live cable that is a size of building wire: older files could name it. It computes as entered, and is not changed by itself. */
export const buildingWire: Check = ({ project, survey }) => [
  ...[...project.crossing.values()].flatMap((crossing) => {
    const gateway = project.gateway.get(crossing.gatewayId);
    if (!gateway) return [];
    const at = survey.gateways.get(gateway.id)?.startPostAt ?? null;
    return said(crossing, `The live cable at ${called(gateway)}`, [crossing.id, gateway.id], at);
  }),
  ...[...project.leadOut.values()].flatMap((leadOut) =>
    said(leadOut, `The cable of ${called(leadOut)}`, [leadOut.id], leadOut.path[0] ?? null),
  ),
];

function said(thing: Crossing | LeadOut, head: string, ids: readonly string[], at: LonLat | null): Finding[] {
  const { kind, id, cableId, status } = thing;
  if (!isBuildingWire(cableId)) return [];
  const fix: Fix = {
    label: 'Plan fence lead-out cable, steel core 2.5 mm',
    edit: changeThing({ kind, id, to: { cableId: fenceCableId } }),
  };
  const planned = status === 'planned';
  return [
    finding('buildingWire', 'warning', ids, {
      message: `${head} is entered as building wire, whose insulation is not made for the voltage of a fence.`,
      remedy: planned
        ? 'Choose fence lead-out cable rated 10 kV or more.'
        : 'If it lies there, take it for a fault to come: keep people and stock off, and replace it with fence lead-out cable rated 10 kV or more. If the entry is wrong, choose the cable that lies there.',
      source,
      at,
      fixes: planned ? [fix] : [],
    }),
  ];
}
