/** What kinds and their fields are called, and what a field must be. */
export const kinds = {};
