import type { AnyKind, Fields, InList, ListName, ThingFrom } from './describe.ts';
import { simpleKinds } from './simpleKinds.ts';
import { handover, keptPlan, photo } from './snapshots.ts';

/** The description of every kind; what a thing stands on comes before it. */
export const allKinds = [...simpleKinds, photo, keptPlan, handover] as const;

export type Described = (typeof allKinds)[number];
export type Kind = Described['kind'];
export type Thing = ThingFrom<Described>;
export type ThingOf<K extends Kind> = Extract<Thing, { readonly kind: K }>;

/** The kinds, in the order of their descriptions. */
export const kinds: readonly Kind[] = allKinds.map(({ kind }) => kind);

const byKind: ReadonlyMap<string, AnyKind> = new Map(allKinds.map((each) => [each.kind, each]));

/** The description of a kind, as everything sees it that walks any kind. */
export function describedAs(kind: Kind): AnyKind {
  return byKind.get(kind)!;
}

/** A kind's fields by name. */
export function fieldsOf(kind: Kind): Fields {
  return describedAs(kind).fields as Fields;
}

/** The kinds that stand in a list, in the order of their descriptions. */
export function kindsIn<N extends ListName>(list: N): readonly InList<Described, N>['kind'][] {
  const standing = allKinds.filter(({ lists }) => (lists as readonly ListName[]).includes(list));
  return standing.map(({ kind }) => kind) as InList<Described, N>['kind'][];
}

/** The kinds that stand in a list, for the compiler. */
export type KindIn<N extends ListName> = InList<Described, N>['kind'];
