import { app, BrowserWindow, dialog } from 'electron';
import { createService, pageFolder } from '../host/createService.ts';
import { openFirst } from '../host/openFirst.ts';
import { userFolders } from '../host/userFolders.ts';
import { desktopOf } from './desktop.ts';
import { bindCalls, bindEvents } from './ipc.ts';
import { setMenu } from './menu.ts';
import { registerPageScheme, servePage } from './pageScheme.ts';
import { refuseAllElse, refusePermissions } from './refusals.ts';
import { openWindow } from './window.ts';

/** The desktop app: one process, one open file, a window on it. */

app.enableSandbox();
registerPageScheme();
refuseAllElse();

if (app.requestSingleInstanceLock()) start();
else app.quit();

function start(): void {
  const service = createService();
  const folders = userFolders();

  const openBoundWindow = () => bindEvents(service, openWindow().webContents);

  app.on('second-instance', () => {
    const [window] = BrowserWindow.getAllWindows();
    if (window?.isMinimized()) window.restore();
    window?.focus();
  });
  app.on('window-all-closed', () => app.quit());
  app.on('will-quit', () => {
    const problem = service.dispose();
    if (problem) dialog.showErrorBox(problem.message, problem.remedy);
  });

  void app.whenReady().then(async () => {
    refusePermissions();
    servePage(pageFolder);
    setMenu();
    bindCalls(service, (contents) => desktopOf(contents, folders.projects));
    await openFirst(service, process.argv.slice(1));
    openBoundWindow();
  });
}
