import { describedAs } from '../../kinds/allKinds.ts';
import { nextName } from '../../model/names.ts';
import { putAll } from '../../model/project.ts';
import type { Thing } from '../../model/things.ts';
import { message } from '../../words/message.ts';
import { type ExchangedKind, exchangedKinds } from '../preview/ours.ts';
import type { PreviewFeature } from '../preview/types.ts';
import { checkedThing, onlyKey } from './checkedThing.ts';
import { type Intake, tell } from './intake.ts';
import { sameValue } from './sameValue.ts';

/** Takes over what this program wrote, kind by kind. The property's own settings only where nothing is drawn yet. */
export function importOurs(intake: Intake, features: readonly PreviewFeature[], withProperty: boolean): void {
  const byKind = Map.groupBy(features, ({ ours }) => ours?.kind);
  for (const kind of exchangedKinds) {
    const ofKind = byKind.get(kind) ?? [];
    if (kind !== 'property' || withProperty) importKind(intake, kind, ofKind);
    else if (ofKind.length > 0) intake.notes.push(message('exchange.intake.settingsStay'));
  }
}

/** All things of one kind are checked against what was there before, and put in together. */
function importKind(intake: Intake, kind: ExchangedKind, features: readonly PreviewFeature[]): void {
  const table = intake.project[kind] as ReadonlyMap<string, Thing>;
  const names = new TakenNames(kind, table.values());
  const only = new Map([...table.values()].flatMap((thing) => onlyOf(thing)));
  const taken = new Map<string, Thing>();
  for (const feature of features) {
    const { id } = feature.ours!;
    if (taken.has(id)) {
      tell(intake, feature, message('exchange.taken.twice', { kind }), message('exchange.remedy.firstIsUsed'));
      continue;
    }
    const checked = checkedThing(intake.project, feature, only);
    if (!checked.ok) {
      tell(intake, feature, checked.why, message('exchange.remedy.fixOrDraw'));
      continue;
    }
    const thing = withFreeName(intake, checked.thing, names);
    if (thing.kind === 'crossing') for (const [key, owner] of onlyOf(thing)) only.set(key, owner);
    const before = table.get(id);
    taken.set(id, before && sameValue(before, thing) ? before : thing);
    if (!before) intake.added++;
    else if (taken.get(id) === before) intake.unchanged++;
    else intake.updated++;
  }
  const changed = [...taken.values()].filter((thing) => table.get(thing.id) !== thing);
  intake.project = putAll(intake.project, changed);
}

function onlyOf(thing: Thing): (readonly [key: string, id: string])[] {
  const key = onlyKey(thing);
  return key === null ? [] : [[key, thing.id]];
}

/** Names that people act on must differ. */
class TakenNames {
  readonly #owners = new Map<string, string>();
  readonly #matters: boolean;

  constructor(kind: ExchangedKind, things: Iterable<Thing>) {
    this.#matters = describedAs(kind).uniqueName === true;
    for (const thing of things) this.take(thing);
  }

  isTaken(thing: Thing): boolean {
    if (!this.#matters || !('name' in thing)) return false;
    const owner = this.#owners.get(thing.name.trim());
    return owner !== undefined && owner !== thing.id;
  }

  take(thing: Thing): void {
    if (this.#matters && 'name' in thing) this.#owners.set(thing.name.trim(), thing.id);
  }

  get all(): readonly string[] {
    return [...this.#owners.keys()];
  }
}

/** A name that is taken gives way to the next free one. */
function withFreeName(intake: Intake, thing: Thing, names: TakenNames): Thing {
  if (!names.isTaken(thing) || !('name' in thing)) {
    names.take(thing);
    return thing;
  }
  const name = freeName(intake, thing, names);
  const { kind, name: before } = thing;
  intake.notes.push(message('exchange.intake.renamed', { kind, name: before, called: name }));
  const renamed = { ...thing, name } as Thing;
  names.take(renamed);
  return renamed;
}

function freeName({ project }: Intake, thing: Thing, names: TakenNames): string {
  const first = nextName(project, thing.kind);
  const [, letters = first, digits = '1'] = /^(\D*)(\d+)$/.exec(first) ?? [];
  let number = Number(digits);
  while (names.all.includes(`${letters}${number}`)) number++;
  return `${letters}${number}`;
}
