import { createLocalPlane, type LocalPlane } from '../geometry/localPlane.ts';
import { unplacedOrigin } from '../model/defaults.ts';
import { type Project, propertyOf } from '../model/project.ts';
import type { LonLat, Property } from '../model/things.ts';

const kept: LocalPlane[] = [];
const mostKept = 4;

/**
 * The working plane of a property. The same origin gives the same object, so that what is worked out in a plane can be
 * kept with it. An origin that is no place on earth gives the plane of the unplaced grid.
 */
export function workingPlane(property: Pick<Property, 'origin'>): LocalPlane {
  const origin = isPlaceOnEarth(property.origin) ? property.origin : unplacedOrigin;
  const known = kept.find((plane) => plane.origin[0] === origin[0] && plane.origin[1] === origin[1]);
  if (known) return known;
  const plane = createLocalPlane(origin);
  kept.unshift(plane);
  kept.length = Math.min(kept.length, mostKept);
  return plane;
}

/** The working plane of a drawing's property, with the measures round its origin (`plane.earth`). */
export function planeOf(project: Project): LocalPlane {
  return workingPlane(propertyOf(project));
}

/** Finite degrees, latitude within a quarter turn, longitude within one and a half turns (180 may be passed). */
export function isPlaceOnEarth(at: LonLat | undefined): at is LonLat {
  return at !== undefined && Math.abs(at[0]) <= 540 && Math.abs(at[1]) <= 90;
}
