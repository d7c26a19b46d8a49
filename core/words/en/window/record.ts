/** The Record workspace. */
export const record = {};
