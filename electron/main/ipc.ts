import { type IpcMainInvokeEvent, ipcMain, type WebContents } from 'electron';
import { calls, type Half } from '../../core/api/calls.ts';
import type { DesktopApi } from '../../core/api/projectApi.ts';
import { fail } from '../../core/api/result.ts';
import { channelOf, eventChannel } from '../../core/api/wire.ts';
import { plainWords } from '../../core/words/figures.ts';
import { dispatch } from '../host/dispatch.ts';
import type { ProjectService } from '../host/projectService.ts';
import { isPageAddress } from './pageScheme.ts';

/** Answers the calls of all desktop windows. `desktopOf` gives what only the calling window's desktop can do. */
export function bindCalls(service: ProjectService, desktopOf: (contents: WebContents) => DesktopApi): void {
  for (const half of Object.keys(calls) as Half[]) {
    for (const call of Object.keys(calls[half])) {
      ipcMain.handle(channelOf(half, call), (event: IpcMainInvokeEvent, message: unknown) => {
        if (!isFromOurPage(event)) {
          const { message, remedy } = plainWords().host.calls.notFromApp;
          return fail('not-valid', message, remedy);
        }
        const host = { project: service.forWindow(windowId(event.sender)), desktop: desktopOf(event.sender) };
        return dispatch(host, half, call, message);
      });
    }
  }
}

/** Tells the window what the others do, as long as it lives. */
export function bindEvents(service: ProjectService, contents: WebContents): void {
  const unsubscribe = service.forWindow(windowId(contents)).subscribe((event) => contents.send(eventChannel, event));
  contents.once('destroyed', unsubscribe);
}

/** Only the page itself may call: the main frame of a window, at the page's own address. */
function isFromOurPage({ sender, senderFrame }: IpcMainInvokeEvent): boolean {
  return senderFrame !== null && senderFrame === sender.mainFrame && isPageAddress(senderFrame.url);
}

function windowId(contents: WebContents): string {
  return `desktop-${contents.id}`;
}
