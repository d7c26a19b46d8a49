/** Where the buried things lie, how sure that is, and what is asked before the ground changes. */
export const locate = {};
