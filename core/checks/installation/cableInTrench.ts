import { cablesNamed } from '../../electrical/conductors/otherCables.ts';
import { boxAround } from '../../geometry/box.ts';
import type { Xy } from '../../geometry/types.ts';
import { between, xyDistanceM } from '../../geometry/vector.ts';
import { keptForPair } from '../../model/memo.ts';
import { refTo, refToService } from '../../model/refTo.ts';
import type { Service } from '../../model/things.ts';
import { measuredPath } from '../../shapes/measuredPath.ts';
import { message } from '../../words/message.ts';
import type { Found } from '../finding.ts';
import type { Check, CheckContext } from '../support/context.ts';
import { finding } from '../support/make.ts';
import { nearestWithin, segmentBox, segmentsNear } from '../support/segmentIndex.ts';

const source = message('checks.cableInTrench.source');

/** Mains, communication or data cables where a fence's live cable lies: one conduit is forbidden, one trench is asked about. */
export const cableInTrench: Check = (context) => [...recorded(context), ...drawn(context)];

/** By what the record of a crossing says of its trench. */
function recorded({ project, survey }: CheckContext): Found[] {
  return [...project.crossingRecord.values()].flatMap(({ crossingId, alsoInTrench }) => {
    const crossing = project.crossing.get(crossingId);
    const gateway = crossing && project.gateway.get(crossing.gatewayId);
    const named = cablesNamed(alsoInTrench);
    if (!crossing || !gateway || !named) return [];
    const record = { gateway: refTo(gateway), text: shortened(alsoInTrench) };
    const about = { source, at: survey.gateways.get(gateway.id)?.startPostAt ?? null, part: 'recorded' };
    if (named.conduit === 'same') {
      return finding('cableInTrench', 'error', [crossing.id, gateway.id], {
        ...about,
        message: message('checks.cableInTrench.same', record),
        remedy: message('checks.cableInTrench.sameRemedy'),
      });
    }
    if (named.conduit === 'own') {
      return finding('cableInTrench', 'hint', [crossing.id, gateway.id], {
        ...about,
        message: message('checks.cableInTrench.own', record),
        remedy: message('checks.cableInTrench.ownRemedy'),
      });
    }
    return finding('cableInTrench', 'warning', [crossing.id, gateway.id], {
      ...about,
      message: message('checks.cableInTrench.notSaid', { ...record, cables: named.words }),
      remedy: message('checks.cableInTrench.notSaidRemedy'),
    });
  });
}

function shortened(text: string): string {
  const plain = text.replaceAll(/\s+/g, ' ').trim();
  return plain.length > 80 ? `${plain.slice(0, 79)}…` : plain;
}

/** Within this of a trench's middle a service lies in it; an assumption of this project. */
const trenchHalfM = 0.3;
/** A service that is in the trench for less than this, and for less than half of it, only crosses it; an assumption. */
const alongM = 1.5;

/** Buried services of such a kind that are drawn along a trench. */
function drawn({ project, survey, services }: CheckContext): Found[] {
  const cables = services.filter(({ service }) => isCable(service) && service.buried);
  if (cables.length === 0) return [];
  const trenches = [
    ...[...survey.crossings.values()].flatMap(({ crossing, gateway, path }) =>
      crossing.method === 'buried' ? [{ id: crossing.id, of: refTo(gateway), xy: path }] : [],
    ),
    ...[...project.leadOut.values()].flatMap((leadOut) => {
      const xy = leadOut.buried ? measuredPath(leadOut.path, survey.plane)?.xy : undefined;
      return xy ? [{ id: leadOut.id, of: refTo(leadOut), xy }] : [];
    }),
  ];
  return trenches.flatMap(({ id, of, xy }) =>
    cables.flatMap(({ service, xy: other }) => {
      const { sharedM, lengthM, first } = sharedBy(xy, other, trenchHalfM);
      if (!first || (sharedM < alongM && sharedM < lengthM / 2)) return [];
      return finding('cableInTrench', 'warning', [id, service.id], {
        message: message('checks.cableInTrench.drawn', {
          service: refToService(service),
          thing: of,
          sharedM,
          withinM: trenchHalfM,
        }),
        remedy: message('checks.cableInTrench.drawnRemedy'),
        source,
        at: survey.plane.toLonLat(first),
        part: 'drawn',
      });
    }),
  );
}

export function isCable({ what }: Service): boolean {
  return what === 'powerLine' || what === 'dataCable';
}

interface Shared {
  readonly sharedM: number;
  readonly lengthM: number;
  readonly first: Xy | null;
}

/** How finely a trench is walked. */
const stepM = 0.1;

/** How much of a trench stays within a distance of a service, and where that begins. */
const sharedBy = keptForPair((trench: readonly Xy[], service: readonly Xy[], withinM: number): Shared => {
  let sharedM = 0;
  let lengthM = 0;
  let first: Xy | null = null;
  const nothing = { sharedM, lengthM, first };
  const box = boxAround(trench);
  if (!box || segmentsNear(service, segmentBox([box[0], box[1]], [box[2], box[3]], withinM)).length === 0)
    return nothing;
  for (const [i, b] of trench.slice(1).entries()) {
    const a = trench[i]!;
    const segmentM = xyDistanceM(a, b);
    lengthM += segmentM;
    if (segmentsNear(service, segmentBox(a, b, withinM)).length === 0) continue;
    const steps = Math.max(1, Math.ceil(segmentM / stepM));
    for (let step = 0; step < steps; step++) {
      const here = between(a, b, (step + 0.5) / steps);
      if (!nearestWithin(service, here, withinM)) continue;
      first ??= here;
      sharedM += segmentM / steps;
    }
  }
  return { sharedM, lengthM, first };
});
