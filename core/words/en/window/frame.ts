/** The window around the workspaces: welcome, cover, dialogs, commands, problems, parts. */
export const frame = {};
