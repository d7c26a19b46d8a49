import { homedir } from 'node:os';
import { join } from 'node:path';

/** Where the app keeps what belongs to the user and not to one property. */
export interface UserFolders {
  /** Small files of the app's own: the list of recent files. */
  readonly config: string;
  /** Where new project files go unless the user says otherwise. */
  readonly projects: string;
}

/** The user's folders; with the environment variable UNDERGATE_HOME both lie in that folder. */
export function userFolders(
  environment: Readonly<Record<string, string | undefined>> = process.env,
  platform: NodeJS.Platform = process.platform,
  home: string = homedir(),
): UserFolders {
  const own = environment.UNDERGATE_HOME;
  if (own) return { config: join(own, 'config'), projects: join(own, 'projects') };
  return { config: join(configRoot(environment, platform, home), 'undergate'), projects: join(home, 'Undergate') };
}

function configRoot(environment: Readonly<Record<string, string | undefined>>, platform: string, home: string): string {
  if (platform === 'win32') return environment.APPDATA ?? join(home, 'AppData', 'Roaming');
  if (platform === 'darwin') return join(home, 'Library', 'Application Support');
  return environment.XDG_CONFIG_HOME || join(home, '.config');
}
