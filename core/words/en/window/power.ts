/** The Power workspace. */
export const power = {};
