import { cablesNamed } from '../../electrical/conductors/otherCables.ts';
import { boxAround } from '../../geometry/box.ts';
import type { Xy } from '../../geometry/types.ts';
import { between, xyDistanceM } from '../../geometry/vector.ts';
import { called } from '../../model/edits/support/find.ts';
import { capital } from '../../model/text.ts';
import type { Service } from '../../model/things.ts';
import { measuredPath } from '../../shapes/measuredPath.ts';
import type { Finding } from '../finding.ts';
import type { Check, CheckContext } from '../support/context.ts';
import { finding, listed, standard, theService } from '../support/make.ts';
import { keptForPair } from '../support/pairCache.ts';
import { nearestWithin, segmentBox, segmentsNear } from '../support/segmentIndex.ts';

const source = `${standard}; what may share a trench: local rules`;
const oneTrench =
  'In one trench, each in a conduit of its own: ask its owner and the local rules how far apart they must lie.';

/** Mains, communication or data cables where a fence's live cable lies: one conduit is forbidden, one trench is asked about. */
export const cableInTrench: Check = (context) => [...recorded(context), ...drawn(context)];

/** By what the record of a crossing says of its trench. */
function recorded({ project, survey }: CheckContext): Finding[] {
  return [...project.crossingRecord.values()].flatMap(({ crossingId, alsoInTrench }) => {
    const crossing = project.crossing.get(crossingId);
    const gateway = crossing && project.gateway.get(crossing.gatewayId);
    const named = cablesNamed(alsoInTrench);
    if (!crossing || !gateway || !named) return [];
    const head = `In the trench under ${called(gateway)} lies, by its record, "${shortened(alsoInTrench)}"`;
    const about = { source, at: survey.gateways.get(gateway.id)?.startPostAt ?? null, part: 'recorded' };
    if (named.conduit === 'same') {
      return finding('cableInTrench', 'error', [crossing.id, gateway.id], {
        ...about,
        message: `${head}: in one conduit with the live cable, which is forbidden for mains, communication and data cables.`,
        remedy:
          'Energiser off, and ask the owner of that cable before you touch it. Give the live cable a conduit of its own.',
      });
    }
    if (named.conduit === 'own') {
      return finding('cableInTrench', 'hint', [crossing.id, gateway.id], {
        ...about,
        message: `${head}, in a conduit of its own.`,
        remedy: oneTrench,
      });
    }
    return finding('cableInTrench', 'warning', [crossing.id, gateway.id], {
      ...about,
      message: `${head} (${listed(named.words)}). Whether it has a conduit of its own is not said; one conduit with the live cable is forbidden.`,
      remedy: `In one conduit: take one of the two out. ${oneTrench} Then write in the record "in its own conduit".`,
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
function drawn({ project, survey, services, say }: CheckContext): Finding[] {
  const cables = services.filter(({ service }) => isCable(service) && service.buried);
  if (cables.length === 0) return [];
  const trenches = [
    ...[...survey.crossings.values()].flatMap(({ crossing, gateway, path }) =>
      crossing.method === 'buried' ? [{ id: crossing.id, where: `under ${called(gateway)}`, xy: path }] : [],
    ),
    ...[...project.leadOut.values()].flatMap((leadOut) => {
      const xy = leadOut.buried ? measuredPath(leadOut.path, survey.plane)?.xy : undefined;
      return xy ? [{ id: leadOut.id, where: `of ${called(leadOut)}`, xy }] : [];
    }),
  ];
  return trenches.flatMap(({ id, where, xy }) =>
    cables.flatMap(({ service, xy: other }) => {
      const { sharedM, lengthM, first } = sharedBy(xy, other, trenchHalfM);
      if (!first || (sharedM < alongM && sharedM < lengthM / 2)) return [];
      return finding('cableInTrench', 'warning', [id, service.id], {
        message: `${capital(theService(service))} is drawn along the trench ${where}, for ${say(sharedM)} within ${say(trenchHalfM)} of it. One conduit with the live cable is forbidden.`,
        remedy: `Lay the live cable elsewhere, or at least in a conduit of its own. ${oneTrench}`,
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
const sharedBy = keptForPair((trench, service, withinM): Shared => {
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
