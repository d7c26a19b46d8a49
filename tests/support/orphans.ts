import { conductorById } from '../../core/electrical/conductors/conductorLibrary.ts';
import { parsePlaceKey, thingsOfPlaceKey } from '../../core/model/placeKey.ts';
import { allThings, kinds, type Project } from '../../core/model/project.ts';
import type { Kind, SwitchPlace, Thing } from '../../core/model/things.ts';

/**
 * What a thing names without which it can't be. What says how something once was is not among it: the switches and the
 * energiser of readings and searches for faults, the post that a tape was held to, the run that a reading was part of.
 */
function needs(thing: Thing): { readonly kind: Kind; readonly id: string }[] {
  switch (thing.kind) {
    case 'fenceLine':
    case 'fenceMake':
      return [{ kind: 'fenceType', id: thing.typeId }];
    case 'gateway':
    case 'switchCandidate':
      return [{ kind: 'fenceLine', id: thing.lineId }];
    case 'crossing':
      return [{ kind: 'gateway', id: thing.gatewayId }];
    case 'switch':
      return [placeNeeds(thing.place)];
    case 'switchRule': {
      const key = parsePlaceKey(thing.id);
      return key ? [...thingsOfPlaceKey(key)] : [{ kind: 'switchRule', id: 'a key that can be read' }];
    }
    case 'leadOut':
    case 'earthField':
      return [{ kind: 'energiser', id: thing.energiserId }];
    case 'earthTest':
      return [{ kind: 'earthField', id: thing.earthFieldId }];
    case 'crossingRecord':
    case 'buriedPoint':
      return [{ kind: 'crossing', id: thing.crossingId }];
    case 'builtMark':
      return [{ kind: thing.thingKind, id: thing.thingId }];
    case 'photo':
      return thing.of ? [thing.of] : [];
    case 'stageMark':
      return [{ kind: 'stage', id: thing.stageId }];
    case 'kit':
      return thing.parts.map(({ itemId }) => ({ kind: 'catalogueItem', id: itemId }));
    default:
      return [];
  }
}

function placeNeeds(place: SwitchPlace): { kind: Kind; id: string } {
  switch (place.on) {
    case 'gateway':
      return { kind: 'gateway', id: place.gatewayId };
    case 'leadOut':
      return { kind: 'leadOut', id: place.leadOutId };
    case 'line':
    case 'lineEnd':
      return { kind: 'fenceLine', id: place.lineId };
  }
}

/** Every thing that names something that is not there, in words: "photo photo-7: gateway gateway-3". */
export function orphansIn(project: Project): string[] {
  const own = [...project.conductor.values()];
  const ids = new Set([...allThings(project)].map(({ id }) => id));
  return [...allThings(project)].flatMap((thing) => {
    const missing = needs(thing)
      .filter(({ kind, id }) => !project[kind].has(id))
      .map(({ kind, id }) => `${kind} ${id}`);
    const wires = [
      ...('cableId' in thing ? [thing.cableId] : []),
      ...(thing.kind === 'fenceType' ? [thing.wireId, thing.plainWireId ?? thing.wireId] : []),
    ].filter((id) => !conductorById(id, own));
    const staged = thing.kind === 'stageMark' && !ids.has(thing.thingId) ? [`thing ${thing.thingId}`] : [];
    return [...missing, ...wires.map((id) => `conductor ${id}`), ...staged].map(
      (what) => `${thing.kind} ${thing.id}: ${what}`,
    );
  });
}

/** Two crossings of one gateway, two records, feet or bends of one crossing, and the like. */
export function doublesIn(project: Project): string[] {
  const only = kinds.flatMap((kind) => [...project[kind].values()].flatMap((thing: Thing) => onlyKey(thing) ?? []));
  return only.filter((key, i) => only.indexOf(key) !== i);
}

function onlyKey(thing: Thing): string | null {
  switch (thing.kind) {
    case 'crossing':
      return `crossing of ${thing.gatewayId}`;
    case 'crossingRecord':
      return `record of ${thing.crossingId}`;
    case 'buriedPoint':
      return thing.role === 'point' ? null : `${thing.role} of ${thing.crossingId}`;
    case 'builtMark':
      return `mark of ${thing.thingKind} ${thing.thingId}`;
    case 'stageMark':
      return `stage of ${thing.thingId}`;
    default:
      return null;
  }
}
