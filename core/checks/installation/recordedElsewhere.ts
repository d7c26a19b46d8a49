import { crossingSource } from '../../locate/crossingSource.ts';
import { crossingsInGround } from '../../locate/inGround/crossingsInGround.ts';
import { openingMovedM } from '../../locate/recordedOpening.ts';
import { samePostM, tieFromKey } from '../../locate/tieFrom.ts';
import { labelOf } from '../../locate/ties.ts';
import { called } from '../../model/edits/support/find.ts';
import type { BuriedPoint } from '../../model/recordThings.ts';
import type { GatewayShape } from '../../shapes/types.ts';
import { capital } from '../../words/text.ts';
import type { Check } from '../support/context.ts';
import { finding, listed } from '../support/make.ts';

/** A crossing that lies where its gate stood when it was dug, and no longer under the gate as it is drawn. */
export const recordedElsewhere: Check = ({ project, survey, say }) =>
  [...crossingsInGround(project).values()].flatMap((crossing) => {
    const source = crossingSource(project, survey, crossing.gatewayId);
    const drawn = survey.gateways.get(crossing.gatewayId);
    if (!source?.record?.opening || !drawn) return [];
    const apartM = openingMovedM(source.shape, drawn);
    if (apartM < samePostM) return [];
    const { gateway } = drawn;
    return finding('recordedElsewhere', 'warning', [crossing.id, gateway.id], {
      message: `The crossing under ${called(gateway)} lies where the gate's posts stood when it was dug; they are drawn up to ${say(apartM)} from there now.`,
      remedy:
        'Find goes by where it was dug. If another is to be dug, remove this one and answer that it stays in the ground.',
      at: source.shape.startPostAt,
    });
  });

interface MovedPost {
  readonly name: string;
  readonly points: readonly BuriedPoint[];
  readonly labels: readonly string[];
  readonly apartM: number;
}

function pointInWords(point: BuriedPoint, shape: GatewayShape): string {
  return point.name.trim() === '' ? `the ${labelOf(point, shape)}` : labelOf(point, shape);
}

/** A post that tapes were held to, drawn somewhere else now. */
export const tiePostMoved: Check = ({ project, survey, say }) => {
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
        message: `${capital(name)} is drawn ${say(apartM)} from where it stood when ${listed(labels)} ${points.length === 1 ? 'was' : 'were'} taped from it.`,
        remedy: 'The tapes count from where it stood. If the drawing is wrong, move it back.',
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
    const what =
      points.length === 0
        ? 'The record'
        : points.length === 1
          ? 'A measured point'
          : `${points.length} measured points`;
    const from = tie ? `, taped from ${tie.postName || 'a post'},` : '';
    return finding(
      'recordWithoutCrossing',
      'warning',
      things.map(({ id }) => id),
      {
        message: `${what} of a buried crossing that is drawn no longer${from} ${points.length > 1 ? 'are' : 'is'} still in this file.`,
        remedy: 'The cable may still be in the ground: the dig check warns of it where its tapes allow it.',
        at: tie?.postAt ?? null,
      },
    );
  });
};
