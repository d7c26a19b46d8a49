import type { HostEvent } from '../../core/api/projectApi.ts';

/** The events in a stream of server-sent events (WHATWG HTML, 9.2), of which the host uses only one-line `data`. */
export async function* eventsOf(stream: ReadableStream<Uint8Array<ArrayBuffer>>): AsyncGenerator<HostEvent> {
  const reader = stream.pipeThrough(new TextDecoderStream()).getReader();
  let rest = '';
  try {
    for (;;) {
      const { value, done } = await reader.read();
      if (done) return;
      const blocks = (rest + value).split('\n\n');
      rest = blocks.pop() ?? '';
      for (const block of blocks) if (block.startsWith('data: ')) yield JSON.parse(block.slice(6)) as HostEvent;
    }
  } finally {
    await reader.cancel();
  }
}
