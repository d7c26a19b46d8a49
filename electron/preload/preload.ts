import { contextBridge, type IpcRendererEvent, ipcRenderer } from 'electron';
import { callsBy, type Half } from '../../core/api/calls.ts';
import type { Host, HostEvent } from '../../core/api/projectApi.ts';
import type { Result } from '../../core/api/result.ts';
import { channelOf, eventChannel } from '../../core/api/wire.ts';

/** All that the page gets of the desktop: one function for each call of the contract, and the events. */

const by =
  (half: Half) =>
  (call: string, message?: unknown): Promise<Result<unknown>> =>
    ipcRenderer.invoke(channelOf(half, call), message) as Promise<Result<unknown>>;

const host: Host = {
  project: {
    ...callsBy('project', by('project')),
    subscribe: (listener) => {
      const hear = (_event: IpcRendererEvent, event: HostEvent) => listener(event);
      ipcRenderer.on(eventChannel, hear);
      return () => {
        ipcRenderer.removeListener(eventChannel, hear);
      };
    },
  },
  desktop: callsBy('desktop', by('desktop')),
};

contextBridge.exposeInMainWorld('undergate', host);
