/** What is said of what was built. */
export const record = {};
