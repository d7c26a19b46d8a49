import { crossingSource } from '../../locate/crossingSource.ts';
import { crossingsInGround } from '../../locate/inGround/crossingsInGround.ts';
import { openingMovedM } from '../../locate/recordedOpening.ts';
import { samePostM, tieFromKey } from '../../locate/tieFrom.ts';
import { labelOf } from '../../locate/ties.ts';
import type { BuriedPoint } from '../../model/recordThings.ts';
import { refTo } from '../../model/refTo.ts';
import type { GatewayShape } from '../../shapes/types.ts';
import { type Message, message } from '../../words/message.ts';
import type { Check } from '../support/context.ts';
import { finding } from '../support/make.ts';

/** A crossing that lies where its gate stood when it was dug, and no longer under the gate as it is drawn. */
export const recordedElsewhere: Check = ({ project, survey }) =>
  [...crossingsInGround(project).values()].flatMap((crossing) => {
    const source = crossingSource(project, survey, crossing.gatewayId);
    const drawn = survey.gateways.get(crossing.gatewayId);
    if (!source?.record?.opening || !drawn) return [];
    const apartM = openingMovedM(source.shape, drawn);
    if (apartM < samePostM) return [];
    const { gateway } = drawn;
    return finding('recordedElsewhere', 'warning', [crossing.id, gateway.id], {
      message: message('checks.recordedElsewhere.message', { gateway: refTo(gateway), apartM }),
      remedy: message('checks.recordedElsewhere.remedy'),
      at: source.shape.startPostAt,
    });
  });

interface MovedPost {
  readonly name: Message;
  readonly points: readonly BuriedPoint[];
  readonly labels: readonly Message[];
  readonly apartM: number;
}

function pointInWords(point: BuriedPoint, shape: GatewayShape): Message {
  const label = labelOf(point, shape);
  return point.name.trim() === '' ? message('checks.tiePostMoved.point', { label }) : label;
}

/** A post that tapes were held to, drawn somewhere else now. */
export const tiePostMoved: Check = ({ project, survey }) => {
  const moved = new Map<string, MovedPost>();
  for (const { gatewayId } of project.crossing.values()) {
    const source = crossingSource(project, survey, gatewayId);
    for (const point of source?.points ?? []) {
      for (const tie of point.ties) {
        // Its own gate's posts are told of by the rule above.
        if (tie.from.on === 'gatePost' && tie.from.gatewayId === gatewayId && source!.record?.opening) continue;
        const { name, movedM } = source!.postOf(tie);
        if (movedM === 0) continue;
        const key = tieFromKey(tie.from);
        const { points = [], labels = [], apartM = 0 } = moved.get(key) ?? {};
        const isKnown = points.includes(point);
        moved.set(key, {
          name,
          points: isKnown ? points : [...points, point],
          labels: isKnown ? labels : [...labels, pointInWords(point, source!.shape)],
          apartM: Math.max(apartM, movedM),
        });
      }
    }
  }
  return [...moved].map(([key, { name, points, labels, apartM }]) =>
    finding(
      'tiePostMoved',
      'hint',
      points.map(({ id }) => id),
      {
        message: message('checks.tiePostMoved.message', { post: name, labels, points: points.length, apartM }),
        remedy: message('checks.tiePostMoved.remedy'),
        at: points[0]!.ties[0]!.postAt,
        part: key,
      },
    ),
  );
};

/** What was recorded of a crossing that is drawn no longer, or not below ground, from before such things were kept. */
export const recordWithoutCrossing: Check = ({ project }) => {
  const lost = [...project.buriedPoint.values(), ...project.crossingRecord.values()].filter(
    ({ crossingId }) => project.crossing.get(crossingId)?.method !== 'buried',
  );
  return [...Map.groupBy(lost, ({ crossingId }) => crossingId).values()].map((things) => {
    const points = things.filter((thing) => thing.kind === 'buriedPoint');
    const tie = points.flatMap(({ ties }) => ties)[0];
    return finding(
      'recordWithoutCrossing',
      'warning',
      things.map(({ id }) => id),
      {
        message: message('checks.recordWithoutCrossing.message', {
          points: points.length,
          post: tie ? tie.postName : null,
        }),
        remedy: message('checks.recordWithoutCrossing.remedy'),
        at: tie?.postAt ?? null,
      },
    );
  });
};
