/** The Draw workspace. */
export const draw = {};
