import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { windowSettings } from '../../core/api/messageSchemas.ts';
import { noWindowSettings, type WindowSettings } from '../../core/api/windowSettings.ts';
import { languageOf, setLanguage } from '../../core/words/language.ts';
import type { UserFolders } from './userFolders.ts';
import { writeConfig } from './writeConfig.ts';

/** Where the window settings lie. */
export function settingsPath({ config }: Pick<UserFolders, 'config'>): string {
  return join(config, 'window.json');
}

/** The window settings in the file at `path`; where it is not there yet or spoilt, none. */
export function readSettings(path: string): WindowSettings {
  try {
    return windowSettings.parse(JSON.parse(readFileSync(path, 'utf8')));
  } catch {
    return noWindowSettings;
  }
}

export function keepSettings(path: string, settings: WindowSettings): null {
  writeConfig(path, settings);
  setLanguage(languageOf(settings.language));
  return null;
}
