/** How near the pointer must come, CSS pixels. */
export const snapReachPx = 14;
export const handleReachPx = 13;
/** A tool that works on a line takes the nearest within this. */
export const lineReachPx = 34;
