/** What the host, its files and the start say. */
export const host = {};
