import { nextName } from '../names.ts';
import type { LonLat, Post } from '../things.ts';
import { addThing } from './addThing.ts';
import type { Edit, NewId } from './support/edit.ts';

export interface PlacePost {
  readonly at: LonLat;
  readonly role?: Post['role'];
  readonly name?: string;
}

export function placePost(wanted: PlacePost, newId: NewId): Edit {
  return (project) => addThing(postOf(wanted, wanted.name ?? nextName(project, 'post')), newId)(project);
}

function postOf({ at, role = 'strainer' }: PlacePost, name: string): Omit<Post, 'id'> {
  return { kind: 'post', name, at, role, note: '' };
}
