/** Coordinates and systems of coordinates. */
export const coordinates = {};
