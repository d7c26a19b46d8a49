import { EventEmitter } from 'node:events';
import type { Dialog, IpcMain, IpcMainInvokeEvent, IpcRenderer, Session, WebContents } from 'electron';

/**
 * The few parts of Electron that calls go through, without Electron: arguments and results are cloned on their way and
 * errors wrapped, as Electron does it. Checked against Electron's own types.
 */

type Handler = (event: IpcMainInvokeEvent, ...args: unknown[]) => unknown;

const handlers = new Map<string, Handler>();

type Listener = (...args: never[]) => void;

export const ipcMain = {
  handle(channel: string, handler: Handler) {
    if (handlers.has(channel)) throw new Error(`Attempted to register a second handler for '${channel}'`);
    handlers.set(channel, handler);
  },
} satisfies Pick<IpcMain, 'handle'>;

export const dialog = {
  showOpenDialog: () => Promise.resolve({ canceled: true, filePaths: [] }),
  showSaveDialog: () => Promise.resolve({ canceled: true, filePath: '' }),
} satisfies Pick<Dialog, 'showOpenDialog' | 'showSaveDialog'>;

export const BrowserWindow = { fromWebContents: () => null };

export const app = new EventEmitter();

export const protocol = {};

type Answers = { request?: boolean; check?: boolean; device?: boolean };
const answers: Answers = {};

export const session = {
  defaultSession: {
    setPermissionRequestHandler(handler) {
      const details = { requestingUrl: '', isMainFrame: true };
      handler?.(undefined as never, 'media', (granted) => (answers.request = granted), details);
    },
    setPermissionCheckHandler(handler) {
      answers.check = handler?.(null, 'media', '', undefined as never) ?? true;
    },
    setDevicePermissionHandler(handler) {
      answers.device = handler?.(undefined as never) ?? true;
    },
  } satisfies Pick<Session, 'setPermissionRequestHandler' | 'setPermissionCheckHandler' | 'setDevicePermissionHandler'>,
  /** What the handlers that were set answer. */
  permissions: () => answers,
};

interface FakeContents extends WebContents {
  /** What a page that opens a window is answered. */
  windowOpenAnswer(): unknown;
}

let contentsCount = 0;

/** One window: the main process's handle of it, and the `ipcRenderer` of its preload. */
export class FakeWindow {
  readonly #incoming = new EventEmitter();
  readonly #frame: { url: string };
  readonly contents: FakeContents;

  constructor(url: string) {
    const incoming = this.#incoming;
    this.#frame = { url };
    let onWindowOpen: (() => unknown) | undefined;
    const contents = Object.assign(new EventEmitter(), {
      id: ++contentsCount,
      mainFrame: this.#frame,
      send(channel: string, ...args: unknown[]) {
        incoming.emit(channel, {}, ...structuredClone(args));
      },
      setWindowOpenHandler(handler: () => unknown) {
        onWindowOpen = handler;
      },
      windowOpenAnswer: () => onWindowOpen?.(),
    });
    this.contents = contents as unknown as FakeContents;
  }

  readonly ipcRenderer: Pick<IpcRenderer, 'invoke' | 'on' | 'removeListener'> = {
    invoke: (channel: string, ...args: unknown[]) => this.invokeFrom(this.#frame, channel, ...args),
    on: (channel: string, listener: Listener) => {
      this.#incoming.on(channel, listener as (...args: unknown[]) => void);
      return this.ipcRenderer as IpcRenderer;
    },
    removeListener: (channel: string, listener: Listener) => {
      this.#incoming.off(channel, listener as (...args: unknown[]) => void);
      return this.ipcRenderer as IpcRenderer;
    },
  };

  /** A call as it comes from a frame of this window, by default its main frame. */
  async invokeFrom(frame: { url: string } | null, channel: string, ...args: unknown[]): Promise<unknown> {
    const handler = handlers.get(channel);
    if (!handler) throw new Error(`Error invoking remote method '${channel}': No handler registered`);
    const event = { sender: this.contents, senderFrame: frame } as unknown as IpcMainInvokeEvent;
    try {
      return structuredClone(await handler(event, ...structuredClone(args)));
    } catch (error) {
      throw new Error(`Error invoking remote method '${channel}': ${String(error)}`);
    }
  }

  destroy(): void {
    this.contents.emit('destroyed');
  }
}

export function forgetHandlers(): void {
  handlers.clear();
}
