import { commands } from './frame/commands.ts';

/** The window around the workspaces: welcome, cover, dialogs, commands, problems, parts. */
export const frame = { commands };
