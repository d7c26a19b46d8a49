import type { ServerResponse } from 'node:http';
import type { ProjectApi } from '../../core/api/projectApi.ts';

/** So often a quiet stream shows that it still lives. */
const heartbeatMs = 20_000;

/** Sends the window its events as server-sent events until it goes away. */
export function streamEvents(api: ProjectApi, response: ServerResponse): void {
  response.writeHead(200, { 'Content-Type': 'text/event-stream', 'Cache-Control': 'no-store' });
  response.write(': open\n\n');
  const unsubscribe = api.subscribe((event) => response.write(`data: ${JSON.stringify(event)}\n\n`));
  const heartbeat = setInterval(() => response.write(': still here\n\n'), heartbeatMs);
  response.on('close', () => {
    clearInterval(heartbeat);
    unsubscribe();
  });
}
