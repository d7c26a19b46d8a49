import { bodySteps } from './bodySteps.ts';

/** A thing as plain JSON, of whatever version: its kind, its id and its fields. */
export type Body = Readonly<Record<string, unknown>>;

/** What one migration does to the bodies of one kind. */
export interface BodyStep {
  /** Number of the migration; bodies of files before it are of the older shape. */
  readonly to: number;
  /** What the kind was called before. */
  readonly kind: string;
  /**
   * The body as it is now: mostly one; several where the kind was split, the thing itself first; none where it is no more.
   * What it does not know of the body it keeps. Bodies within it are still of the older shape, and get their own step after
   * it. A body from a file of another program may lack `at` and `path`, which its geometry holds there.
   */
  readonly upgrade: (body: Body) => readonly Body[];
}

/** Of this version, or any before it, are the exchange files that say nothing of theirs: steps began after it. */
const unmarkedVersion = 7;

/** The version that bodies have now: of the newest step, since others did not change their shape. */
export const bodyVersion = bodySteps.reduce((newest, { to }) => Math.max(newest, to), unmarkedVersion);

/** The version of bodies in a file that says nothing, or nonsense, of it. */
export function versionIn(said: unknown): number {
  return Number.isSafeInteger(said) && (said as number) > unmarkedVersion ? (said as number) : unmarkedVersion;
}

/**
 * Where whole bodies lie within the bodies of a kind: `things[]` is a list of them, `planned.thing` one. A place where they
 * lay in some older shape stays in the list; one that is not there is passed over.
 */
export const bodiesWithin: Readonly<Record<string, readonly string[]>> = {
  keptPlan: ['things[]'],
  handover: ['things[]'],
  builtMark: ['planned.thing'],
  inGround: [
    'was.gateway',
    'was.crossing',
    'was.record',
    'was.points[]',
    'was.mark',
    'was.leadOut',
    'was.earthField',
    'was.tests[]',
  ],
};

/** A body of `version`, of what was then called `kind`, as the present version has it: one, or more or none (`BodyStep`). */
export function upgrade(kind: string, version: number, body: Body): readonly Body[] {
  const due = [...new Set(bodySteps.map(({ to }) => to))].filter((to) => to > version).sort((a, b) => a - b);
  return due.reduce<readonly Body[]>(
    (bodies, to) => bodies.flatMap((each) => upgradeTo(to, each)),
    [body.kind === kind ? body : { ...body, kind }],
  );
}

/** A body as migration `to` leaves it, from how the one before left it; the very same where that changes nothing. */
export function upgradeTo(to: number, body: Body): readonly Body[] {
  const step = bodySteps.find((each) => each.to === to && each.kind === body.kind);
  return (step ? step.upgrade(body) : [body]).map((each) => withInner(each, (inner) => upgradeTo(to, inner)));
}

/** Whether migration `to` changed the shape of any body. */
export function changesBodies(to: number): boolean {
  return bodySteps.some((step) => step.to === to);
}

type Change = (inner: Body) => readonly Body[];

/** A body with what `change` makes of each body within it. */
function withInner(body: Body, change: Change): Body {
  const places = Object.hasOwn(bodiesWithin, String(body.kind)) ? bodiesWithin[String(body.kind)]! : [];
  return places.reduce((whole, place) => changedAt(whole, place.split('.'), change) as Body, body);
}

function changedAt(value: unknown, [field, ...rest]: readonly string[], change: Change): unknown {
  // Where there is room for one, it is the thing itself; what else comes of it is for the step of the body around it.
  if (field === undefined) return isBody(value) ? (change(value)[0] ?? null) : value;
  const name = field.replace('[]', '');
  if (!isObject(value) || !Object.hasOwn(value, name)) return value;
  const after = field === name ? changedAt(value[name], rest, change) : listChanged(value[name], change);
  return after === value[name] ? value : { ...value, [name]: after };
}

function listChanged(list: unknown, change: Change): unknown {
  if (!Array.isArray(list)) return list;
  const changed = list.flatMap((each: unknown): unknown[] => (isBody(each) ? [...change(each)] : [each]));
  return changed.length === list.length && changed.every((each, i) => each === list[i]) ? list : changed;
}

function isObject(value: unknown): value is Readonly<Record<string, unknown>> {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

/** Whether a value is a body: an object that says its kind. */
export function isBody(value: unknown): value is Body {
  return isObject(value) && typeof value.kind === 'string';
}
