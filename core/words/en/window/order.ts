/** The Order workspace. */
export const order = {};
