/** Background maps and pictures. */
export const background = {};
