import { expose } from 'comlink';

/** Stands for a browser's worker whose script exposes `CalledWorker.functions`: what passes is cloned, as by the browser. */
export class CalledWorker extends EventTarget {
  static made: CalledWorker[] = [];
  static functions: Record<string, (...message: never[]) => unknown> = {};
  readonly #ports = new MessageChannel();
  isEnded = false;

  constructor() {
    super();
    CalledWorker.made.push(this);
    const { port1, port2 } = this.#ports;
    expose(CalledWorker.functions, port2);
    port1.onmessage = ({ data }: MessageEvent<unknown>) => {
      if (!this.isEnded) this.dispatchEvent(new MessageEvent('message', { data }));
    };
  }

  postMessage(message: unknown, given: Transferable[] = []): void {
    if (!this.isEnded) this.#ports.port1.postMessage(message, given as never);
  }

  terminate(): void {
    this.isEnded = true;
    this.#ports.port1.close();
  }

  breaks(message: string): void {
    this.dispatchEvent(Object.assign(new Event('error'), { message }));
  }
}
