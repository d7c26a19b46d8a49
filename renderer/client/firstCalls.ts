import type { Host, HostEvent, OpenProject } from '../../core/api/projectApi.ts';
import type { Result } from '../../core/api/result.ts';
import type { WindowSettings } from '../../core/api/windowSettings.ts';
import { connect } from './connect.ts';

/** What a window asks at its start. */
export interface FirstCalls {
  readonly host: Promise<Host>;
  readonly settings: Promise<Result<WindowSettings>>;
  readonly current: Promise<Result<OpenProject | null>>;
  /** Passes on all that the host has told since, and what it tells from now on. */
  readonly hear: (listener: (event: HostEvent) => void) => void;
}

/** Finds the host and asks what every window needs first. Whoever waits for an answer hears what went wrong. */
export function firstCalls(): FirstCalls {
  const early: HostEvent[] = [];
  let listener = (event: HostEvent): void => void early.push(event);
  const host = connect().then((found) => {
    found.project.subscribe((event) => listener(event));
    return found;
  });
  const settings = host.then(({ project }) => project.windowSettings());
  const current = host.then(({ project }) => project.current());
  for (const answer of [settings, current]) answer.catch(() => undefined);
  return {
    host,
    settings,
    current,
    hear: (next) => {
      listener = next;
      early.splice(0).forEach(next);
    },
  };
}
