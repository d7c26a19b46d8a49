import { xyBearingDeg } from '../../geometry/vector.ts';
import type { InGround } from '../../model/inGroundThings.ts';
import { type Project, propertyOf } from '../../model/project.ts';
import { builtMarkId, crossingRecordId } from '../../model/recordDefaults.ts';
import type { BuildableKind, BuriedPoint, CrossingRecord } from '../../model/recordThings.ts';
import { refTo } from '../../model/refTo.ts';
import type { EarthField, Gateway } from '../../model/things.ts';
import { workingPlane } from '../../shapes/workingPlane.ts';
import type { ground } from '../../words/en/locate/ground.ts';
import { type Message, message } from '../../words/message.ts';
import { gatePostName, type HungGate, tieFromKey } from '../tieFrom.ts';
import type { GroundAnswer } from './answer.ts';
import { fateInShort } from './leftWords.ts';
import { type Mark, spanIn, type Touched } from './touched.ts';

/** What is asked before an edit that touches what is built, recorded or taped from. */
export interface GroundQuestion {
  readonly title: Message;
  /** What is touched, a sentence each. */
  readonly lines: readonly Message[];
  /** How many more things are touched than there are lines. */
  readonly more: number;
  readonly ask: Message;
  /** The safe answer first. */
  readonly choices: readonly GroundChoice[];
}

export interface GroundChoice {
  readonly answer: GroundAnswer;
  readonly label: Message;
  /** What will then be so in the file. */
  readonly means: Message;
}

/** More than this is no longer read. */
const mostLines = 8;

/** The one question of an edit; `touched` must not be empty. */
export function groundQuestion(project: Project, touched: readonly Touched[]): GroundQuestion {
  const lines = touched.map((each) => touchedInWords(project, each));
  const buried = touched.filter(isBuried);
  return {
    title: titleOf(touched, buried.length),
    lines: lines.slice(0, mostLines),
    more: Math.max(0, lines.length - mostLines),
    ...choicesOf(touched, buried),
  };
}

/** What is touched, and how: the same for the same question about the same thing. */
export function touchedKey(touched: Touched): string {
  switch (touched.what) {
    case 'crossingGone':
    case 'crossingMoved':
    case 'bowChanged':
      return `${touched.what} ${touched.crossing.id}`;
    case 'leadOutGone':
    case 'leadOutMoved':
      return `${touched.what} ${touched.leadOut.id}`;
    case 'earthFieldGone':
    case 'earthFieldMoved':
      return `${touched.what} ${touched.earthField.id}`;
    case 'markMoved':
    case 'markGone':
      return `${touched.what} ${tieFromKey(touched.mark.from)}`;
    case 'recordChanged':
    case 'recordGone':
      return `${touched.what} ${touched.before.id}`;
    case 'recordAdded':
      return `${touched.what} ${touched.added.id}`;
    case 'inGroundGone':
      return `${touched.what} ${touched.inGround.id}`;
    case 'builtGone':
      return `${touched.what} ${touched.thing.id}`;
  }
}

function isBuried({ what }: Touched): boolean {
  return /^(crossing|leadOut|earthField)/.test(what);
}

function titleOf(touched: readonly Touched[], buried: number): Message {
  if (buried > 0) return message('locate.ground.title.buried', { count: buried });
  const only = (...kinds: Touched['what'][]) => touched.every(({ what }) => kinds.includes(what));
  if (only('inGroundGone')) return message('locate.ground.title.leftRecord');
  if (only('bowChanged')) return message('locate.ground.title.dug');
  if (only('markMoved', 'markGone')) return message('locate.ground.title.tapedFrom');
  if (only('builtGone')) return message('locate.ground.title.built', { count: touched.length });
  if (only('recordGone', 'recordChanged', 'recordAdded')) return message('locate.ground.title.measured');
  return message('locate.ground.title.several');
}

function choicesOf(touched: readonly Touched[], buried: readonly Touched[]): Pick<GroundQuestion, 'ask' | 'choices'> {
  const has = (...kinds: Touched['what'][]) => touched.some(({ what }) => kinds.includes(what));
  const gone = has('crossingGone', 'leadOutGone', 'earthFieldGone');
  const moved = has('crossingMoved', 'leadOutMoved', 'earthFieldMoved');
  if (buried.length > 0) {
    const stays = gone ? 'stays' : has('crossingMoved') ? 'crossingStays' : 'staysWhereItIs';
    return asked(
      'ground',
      choice('stays', stays),
      choice('dead', 'dead'),
      choice('takenOut', 'takenOut'),
      ...(moved && !gone ? [choice('corrected', 'corrected')] : []),
      ...(gone && !moved ? [choice('mistake', 'mistake')] : []),
    );
  }
  if (has('inGroundGone')) {
    return asked('ground', choice('stays', 'recordKept'), choice('takenOut', 'takenOut'), choice('mistake', 'mistake'));
  }
  if (has('markMoved')) return asked('post', choice('stays', 'postMoved'), choice('corrected', 'postCorrected'));
  if (has('bowChanged')) return asked('trench', choice('stays', 'asItWas'), choice('corrected', 'asDrawn'));
  if (has('recordChanged', 'recordAdded')) {
    return asked('record', choice('stays', 'recordedHere'), choice('corrected', 'comesIn'));
  }
  if (has('recordGone')) return asked('deleteRecord', choice('stays', 'recordGoes'));
  if (has('markGone')) return asked('deletePost', choice('stays', 'postGoes'));
  return asked('deleteBuilt', choice('stays', 'builtGoes'));
}

function asked(what: keyof typeof ground.ask, ...choices: readonly GroundChoice[]) {
  return { ask: message(`locate.ground.ask.${what}`), choices };
}

function choice(answer: GroundAnswer, said: keyof typeof ground.answers): GroundChoice {
  return {
    answer,
    label: message(`locate.ground.answers.${said}.label`),
    means: message(`locate.ground.answers.${said}.means`),
  };
}

function touchedInWords(project: Project, touched: Touched): Message {
  switch (touched.what) {
    case 'crossingGone': {
      const { gateway, crossing, how } = touched;
      return message('locate.ground.touched.crossingGone', {
        gateway: gateway.name,
        how,
        ...recordedOf(project, crossing.id),
      });
    }
    case 'crossingMoved': {
      const { gateway, crossing, movedM } = touched;
      return message('locate.ground.touched.crossingMoved', {
        gateway: gateway.name,
        movedM,
        ...recordedOf(project, crossing.id),
      });
    }
    case 'bowChanged': {
      const { gateway, crossing } = touched;
      return message('locate.ground.touched.bowChanged', {
        gateway: gateway.name,
        ...recordedOf(project, crossing.id),
      });
    }
    case 'leadOutGone': {
      const { leadOut, how } = touched;
      const built = builtOn(project, 'leadOut', leadOut.id);
      return message('locate.ground.touched.leadOutGone', { name: leadOut.name, built, how });
    }
    case 'leadOutMoved': {
      const { leadOut, movedM } = touched;
      const built = builtOn(project, 'leadOut', leadOut.id);
      return message('locate.ground.touched.leadOutMoved', { name: leadOut.name, built, movedM });
    }
    case 'earthFieldGone': {
      const { earthField, how } = touched;
      return message('locate.ground.touched.earthFieldGone', { ...stakesOf(project, earthField), how });
    }
    case 'earthFieldMoved': {
      const { earthField, movedM } = touched;
      return message('locate.ground.touched.earthFieldMoved', { ...stakesOf(project, earthField), movedM });
    }
    case 'markMoved':
      return message('locate.ground.touched.markMoved', { ...tapedFrom(project, touched), movedM: touched.movedM });
    case 'markGone':
      return message('locate.ground.touched.markGone', tapedFrom(project, touched));
    case 'recordChanged':
      return message('locate.ground.touched.recordChanged', { record: recordInWords(project, touched.before) });
    case 'recordAdded':
      return message('locate.ground.touched.recordAdded', { record: recordInWords(project, touched.added) });
    case 'recordGone':
      return message('locate.ground.touched.recordGone', { record: recordInWords(project, touched.before) });
    case 'inGroundGone': {
      const { name } = touched.inGround;
      return message('locate.ground.touched.inGroundGone', { name, fate: fateInShort(touched.inGround) });
    }
    case 'builtGone':
      return message('locate.ground.touched.builtGone', { thing: refTo(touched.thing) });
  }
}

/** What is recorded of a crossing: when it was built, points taped or measured, depths, photos. */
function recordedOf(project: Project, crossingId: string) {
  return {
    isBuilt: project.crossing.get(crossingId)?.status === 'built',
    built: builtOn(project, 'crossing', crossingId),
    points: [...project.buriedPoint.values()].filter((point) => point.crossingId === crossingId).length,
    depths: project.crossingRecord.get(crossingRecordId(crossingId))?.depths.length ?? 0,
    photos: [...project.photo.values()].filter(({ of }) => of?.id === crossingId).length,
  };
}

/** The day on which a thing was built; null where nobody noted it. */
function builtOn(project: Project, kind: BuildableKind, id: string): string | null {
  return project.builtMark.get(builtMarkId(kind, id))?.date || null;
}

function stakesOf(project: Project, { id, energiserId }: EarthField) {
  return {
    energiser: project.energiser.get(energiserId)?.name || null,
    built: builtOn(project, 'earthField', id),
  };
}

const mostPoints = 4;

function tapedFrom(project: Project, { mark, points }: Extract<Touched, { readonly mark: Mark }>) {
  const said = points.slice(0, mostPoints).map((point) => pointOf(project, point));
  return { post: markInWords(project, mark), points: said, more: points.length - said.length };
}

function markInWords(project: Project, { from, post }: Mark): Message {
  if (post.kind === 'post') return message('locate.ground.touched.post', { name: post.name });
  const gatePost = gatePostName(hungGate(project, post), from.on === 'gatePost' ? from.post : 'start');
  return message('locate.ground.touched.gatePost', { post: gatePost });
}

function hungGate(project: Project, gateway: Gateway): HungGate {
  const span = spanIn(project)(gateway);
  const { toXy } = workingPlane(propertyOf(project));
  return { gateway, bearingDeg: span ? xyBearingDeg(toXy(span.startPostAt), toXy(span.endPostAt)) : 0 };
}

function recordInWords(project: Project, record: CrossingRecord | BuriedPoint | InGround): Message {
  if (record.kind === 'inGround') return message('locate.ground.touched.recordOfLeft', { name: record.name });
  if (record.kind === 'crossingRecord') {
    const gateway = gatewayOf(project, record.crossingId);
    return message('locate.ground.touched.recordOfCrossing', { gateway });
  }
  return message('locate.ground.touched.recordOfPoint', {
    ...pointOf(project, record),
    tapes: record.ties.length,
    offset: record.offset !== null,
    receiver: record.gps !== null,
  });
}

/** "bend", "riser foot", or the name it was given; and its gateway. */
function pointOf(project: Project, { name, role, crossingId }: BuriedPoint) {
  const foot = role === 'startFoot' || role === 'endFoot';
  const point =
    name.trim() !== ''
      ? message('locate.points.named', { name: name.trim() })
      : message(`locate.points.${foot ? 'riserFoot' : role}`);
  return { point, gateway: gatewayOf(project, crossingId) };
}

function gatewayOf(project: Project, crossingId: string): string | null {
  const crossing = project.crossing.get(crossingId);
  return (crossing && project.gateway.get(crossing.gatewayId)?.name) ?? null;
}
