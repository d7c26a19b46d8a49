/** Everything on printed sheets. */
export const sheets = {};
