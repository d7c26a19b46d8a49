/** The Divide workspace. */
export const divide = {};
