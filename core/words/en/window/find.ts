/** The Find workspace. */
export const find = {};
