/** Import, export, heights, coordinates. */
export const exchange = {};
