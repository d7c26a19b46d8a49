import { Menu } from 'electron';

/**
 * On a Mac the menu of the system, which cut, copy and paste need; elsewhere none: the page has its own commands and
 * keys.
 */
export function setMenu(): void {
  const roles: Electron.MenuItemConstructorOptions[] = [
    { role: 'appMenu' },
    { role: 'editMenu' },
    { role: 'windowMenu' },
  ];
  Menu.setApplicationMenu(process.platform === 'darwin' ? Menu.buildFromTemplate(roles) : null);
}
