import { join } from 'node:path';
import { BrowserWindow, type WebPreferences } from 'electron';
import { plainWords } from '../../core/words/figures.ts';
import { topFolder } from '../host/createService.ts';
import { pageAddress } from './pageScheme.ts';

/** No Node in the page, its own world for the preload, the system's sandbox around it. */
export const webPreferences = {
  nodeIntegration: false,
  nodeIntegrationInWorker: false,
  nodeIntegrationInSubFrames: false,
  contextIsolation: true,
  sandbox: true,
  webSecurity: true,
  allowRunningInsecureContent: false,
  webviewTag: false,
  spellcheck: false,
  preload: join(topFolder, 'dist', 'electron', 'preload.cjs'),
} satisfies WebPreferences;

/** A window with the page in it; it shows itself when the page is there. */
export function openWindow(): BrowserWindow {
  const window = new BrowserWindow({
    width: 1440,
    height: 900,
    minWidth: 480,
    minHeight: 480,
    show: false,
    title: plainWords().host.start.title,
    webPreferences,
  });
  window.once('ready-to-show', () => window.show());
  void window.loadURL(pageAddress);
  return window;
}
