import { contextBridge, type IpcRendererEvent, ipcRenderer } from 'electron';
import type { DesktopApi } from '../../core/api/desktopApi.ts';
import type { HostEvent, ProjectApi } from '../../core/api/projectApi.ts';
import { channelOf, eventChannel } from '../../core/api/wire.ts';

/** All that the page gets of the desktop: one function for each call of the contract. */

const project: ProjectApi = {
  current: () => ipcRenderer.invoke(channelOf('project', 'current')),
  create: (request) => ipcRenderer.invoke(channelOf('project', 'create'), request),
  open: (request) => ipcRenderer.invoke(channelOf('project', 'open'), request),
  openDemo: () => ipcRenderer.invoke(channelOf('project', 'openDemo')),
  close: () => ipcRenderer.invoke(channelOf('project', 'close')),
  saveAs: (request) => ipcRenderer.invoke(channelOf('project', 'saveAs'), request),
  recent: () => ipcRenderer.invoke(channelOf('project', 'recent')),
  windowSettings: () => ipcRenderer.invoke(channelOf('project', 'windowSettings')),
  keepWindowSettings: (settings) => ipcRenderer.invoke(channelOf('project', 'keepWindowSettings'), settings),
  listFolder: (request) => ipcRenderer.invoke(channelOf('project', 'listFolder'), request),
  apply: (edit) => ipcRenderer.invoke(channelOf('project', 'apply'), edit),
  undo: () => ipcRenderer.invoke(channelOf('project', 'undo')),
  redo: () => ipcRenderer.invoke(channelOf('project', 'redo')),
  printSheets: (options) => ipcRenderer.invoke(channelOf('project', 'printSheets'), options),
  printOrder: (options) => ipcRenderer.invoke(channelOf('project', 'printOrder'), options),
  printFind: (options) => ipcRenderer.invoke(channelOf('project', 'printFind'), options),
  printPack: (options) => ipcRenderer.invoke(channelOf('project', 'printPack'), options),
  makeGeoPackage: () => ipcRenderer.invoke(channelOf('project', 'makeGeoPackage')),
  addPhotos: (request) => ipcRenderer.invoke(channelOf('project', 'addPhotos'), request),
  photoBytes: (request) => ipcRenderer.invoke(channelOf('project', 'photoBytes'), request),
  beginPicture: (request) => ipcRenderer.invoke(channelOf('project', 'beginPicture'), request),
  addPictureTiles: (request) => ipcRenderer.invoke(channelOf('project', 'addPictureTiles'), request),
  finishPicture: (request) => ipcRenderer.invoke(channelOf('project', 'finishPicture'), request),
  dropPicture: (request) => ipcRenderer.invoke(channelOf('project', 'dropPicture'), request),
  pictureTile: (request) => ipcRenderer.invoke(channelOf('project', 'pictureTile'), request),
  openTileFile: (request) => ipcRenderer.invoke(channelOf('project', 'openTileFile'), request),
  tileFileTile: (request) => ipcRenderer.invoke(channelOf('project', 'tileFileTile'), request),
  subscribe: (listener) => {
    const hear = (_event: IpcRendererEvent, event: HostEvent) => listener(event);
    ipcRenderer.on(eventChannel, hear);
    return () => {
      ipcRenderer.removeListener(eventChannel, hear);
    };
  },
};

const desktop: DesktopApi = {
  chooseOpenPath: () => ipcRenderer.invoke(channelOf('desktop', 'chooseOpenPath')),
  chooseTileFile: () => ipcRenderer.invoke(channelOf('desktop', 'chooseTileFile')),
  chooseSavePath: (request) => ipcRenderer.invoke(channelOf('desktop', 'chooseSavePath'), request),
};

contextBridge.exposeInMainWorld('undergate', { project, desktop });
