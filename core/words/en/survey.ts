/** What the survey says: sections, registers, test sheets, answers in a sentence. */
export const survey = {};
