import type { Kind } from '../things.ts';
import { changeThing, whyNotChangeThing } from './changeThing.ts';
import type { Edit, WhyNot } from './support/edit.ts';

export interface RenameThing {
  readonly kind: Kind;
  readonly id: string;
  readonly name: string;
}

/** Gives a thing another name; spaces around it are taken off. */
export function renameThing({ kind, id, name }: RenameThing): Edit {
  return changeThing({ kind, id, to: { name: name.trim() } });
}

/** `notFound`, `notValid`, `nameTaken`. */
export function whyNotRenameThing({ kind, id, name }: RenameThing): WhyNot {
  return whyNotChangeThing({ kind, id, to: { name: name.trim() } });
}
