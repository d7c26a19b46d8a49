import { nextName } from '../names.ts';
import type { LonLat, Post } from '../things.ts';
import { addThing, whyNotAddThing } from './addThing.ts';
import type { Edit, NewId, WhyNot } from './support/edit.ts';

export interface PlacePost {
  readonly at: LonLat;
  readonly role?: Post['role'];
  readonly name?: string;
}

export function placePost(wanted: PlacePost, newId: NewId): Edit {
  return (project) => addThing(postOf(wanted, wanted.name ?? nextName(project, 'post')), newId)(project);
}

/** `outOfRange`, `tooFar`, `notValid`. */
export function whyNotPlacePost(wanted: PlacePost): WhyNot {
  return whyNotAddThing(postOf(wanted, wanted.name ?? 'P'));
}

function postOf({ at, role = 'strainer' }: PlacePost, name: string): Omit<Post, 'id'> {
  return { kind: 'post', name, at, role, note: '' };
}
