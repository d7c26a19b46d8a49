import { app, session } from 'electron';
import { isPageAddress } from './pageScheme.ts';

/** Keeps every page where it is: no other address, no new window, no embedded page, no permission. */
export function refuseAllElse(): void {
  app.on('web-contents-created', (_created, contents) => {
    contents.setWindowOpenHandler(() => ({ action: 'deny' }));
    contents.on('will-attach-webview', (event) => event.preventDefault());
    contents.on('will-navigate', (event) => {
      if (!isPageAddress(event.url)) event.preventDefault();
    });
    contents.on('will-frame-navigate', (event) => {
      if (!isPageAddress(event.url)) event.preventDefault();
    });
    contents.on('will-redirect', (event) => event.preventDefault());
  });
}

/** Denies camera, place, notifications and the like. Once the app is ready. */
export function refusePermissions(): void {
  session.defaultSession.setPermissionRequestHandler((_contents, _permission, answer) => answer(false));
  session.defaultSession.setPermissionCheckHandler(() => false);
  session.defaultSession.setDevicePermissionHandler(() => false);
}
