/** The map, its tools, its status bar. */
export const map = {};
