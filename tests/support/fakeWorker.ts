/** Stands for the browser's worker: keeps what it is sent, and is told what to answer. */
export class FakeWorker<Heard = unknown, Answer = unknown> extends EventTarget {
  static made: FakeWorker[] = [];
  readonly heard: Heard[] = [];
  isEnded = false;

  constructor() {
    super();
    FakeWorker.made.push(this);
  }

  postMessage(message: Heard): void {
    this.heard.push(message);
  }

  terminate(): void {
    this.isEnded = true;
  }

  answers(message: Answer): void {
    this.dispatchEvent(new MessageEvent('message', { data: message }));
  }

  breaks(message: string): void {
    this.dispatchEvent(Object.assign(new Event('error'), { message }));
  }
}
