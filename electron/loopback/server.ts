import { createServer, type IncomingMessage, type Server, type ServerResponse } from 'node:http';
import type { AddressInfo } from 'node:net';
import { callNamed } from '../../core/api/calls.ts';
import { fail, type Result, succeed } from '../../core/api/result.ts';
import { bytesKey, enterPath, newAddressPath, ticketKey, windowHeader } from '../../core/api/wire.ts';
import { plainWords } from '../../core/words/figures.ts';
import { pageHeaders } from '../host/contentPolicy.ts';
import { dispatch } from '../host/dispatch.ts';
import { encodingsTaken } from '../host/packedFiles.ts';
import { pageFile } from '../host/pageFiles.ts';
import type { ProjectService } from '../host/projectService.ts';
import { streamEvents } from './eventStream.ts';
import { hasToken, isForUs, isFromOurPage, newToken } from './guard.ts';
import { noDesktop } from './noDesktop.ts';
import { isOtherAccount } from './peer.ts';
import { mostBodyBytes, readBody } from './readBody.ts';
import { type TicketCheck, Tickets } from './tickets.ts';

export interface LoopbackOptions {
  readonly service: ProjectService;
  /** Folder of the built page. */
  readonly pageFolder: string;
  /** Called when a page that was not let in asks for a new address: writes one where only the user can read it. */
  readonly onAddressWanted?: () => void;
}

export interface LoopbackHost {
  readonly port: number;
  /** Whoever has it can work on the open file; it is written nowhere. */
  readonly token: string;
  /** The page's address with a new ticket: whoever opens it first, and soon, is given the token. */
  newAddress(): string;
  close(): Promise<void>;
}

/** The longest message of a page that wants to be let in. */
const mostEnteringBytes = 1000;

/** New addresses are written at most so often. */
const addressEveryMs = 1000;

/** The app served to browsers on this machine alone: 127.0.0.1, a port that the system picks, a token of its own. */
export async function startLoopback({
  service,
  pageFolder,
  onAddressWanted = () => {},
}: LoopbackOptions): Promise<LoopbackHost> {
  const token = newToken();
  const tickets = new Tickets();
  let addressWantedAt = Number.NEGATIVE_INFINITY;
  const server = createServer((request, response) => {
    answer(request, response).catch(() => response.destroy());
  });
  const port = await listen(server);

  async function answer(request: IncomingMessage, response: ServerResponse): Promise<void> {
    for (const [name, value] of Object.entries(pageHeaders)) response.setHeader(name, value);
    if (!isForUs(request, port) || !isFromOurPage(request, port)) {
      return refuse(response, 403, said().onlyOwnPage);
    }
    const path = (request.url ?? '').split('?', 1)[0]!;
    if (!path.startsWith('/api/')) return answerWithPage(request, response, path);
    if (path === enterPath) return letIn(request, response);
    if (path === newAddressPath) return writeAddress(request, response);
    if (!hasToken(request, token)) return refuse(response, 401, said().notOpenedByUs);
    const api = service.forWindow(windowOf(request));
    if (path === '/api/events' && request.method === 'GET') return streamEvents(api, response);
    return answerCall(request, response, path, api);
  }

  async function answerWithPage(request: IncomingMessage, response: ServerResponse, path: string): Promise<void> {
    if (request.method !== 'GET' && request.method !== 'HEAD') return refuse(response, 405, said().onlyGet);
    const file = await pageFile(pageFolder, path, encodingsTaken(request.headers['accept-encoding']));
    if (!file) return refuse(response, 404, said().nothingHere);
    const { bytes, mediaType, encoding, lasting, tag } = file;
    response.setHeader('Cache-Control', lasting ? 'private, max-age=31536000, immutable' : 'no-cache');
    response.setHeader('ETag', tag);
    response.setHeader('Vary', 'Accept-Encoding');
    if (request.headers['if-none-match'] === tag) {
      response.writeHead(304).end();
      return;
    }
    if (encoding) response.setHeader('Content-Encoding', encoding);
    response.writeHead(200, { 'Content-Type': mediaType, 'Content-Length': bytes.length });
    response.end(bytes);
  }

  /** Answers the token to the page that has a ticket, or the token itself. */
  async function letIn(request: IncomingMessage, response: ServerResponse): Promise<void> {
    if (request.method !== 'POST') return refuse(response, 405, said().onlyPost);
    if (await isOtherAccount(request.socket)) return refuse(response, 403, said().otherAccount);
    if (hasToken(request, token)) return send(response, 200, succeed({ token }));
    const ticket = (await readBody(request, mostEnteringBytes)) ?? '';
    const check = tickets.redeem(ticket);
    if (check === 'good') return send(response, 200, succeed({ token }));
    refuse(response, statusOf[check], said().notLetIn[check]);
  }

  async function writeAddress(request: IncomingMessage, response: ServerResponse): Promise<void> {
    if (request.method !== 'POST') return refuse(response, 405, said().onlyPost);
    if (await isOtherAccount(request.socket)) return refuse(response, 403, said().otherAccount);
    if (performance.now() - addressWantedAt < addressEveryMs) {
      return refuse(response, 429, said().addressJustWritten);
    }
    addressWantedAt = performance.now();
    onAddressWanted();
    send(response, 200, succeed(null));
  }

  async function answerCall(
    request: IncomingMessage,
    response: ServerResponse,
    path: string,
    project: ReturnType<ProjectService['forWindow']>,
  ): Promise<void> {
    if (request.method !== 'POST') return refuse(response, 405, said().onlyPost);
    if (request.headers['content-type'] !== 'application/json') return refuse(response, 415, said().onlyJson);
    const body = await readBody(request, mostBodyBytes);
    if (body === null) return refuse(response, 413, said().tooLarge({ mostMb: mostBodyBytes / 1024 / 1024 }));
    const [half = '', name = '', ...rest] = path.slice('/api/'.length).split('/');
    if (rest.length > 0) return refuse(response, 404, said().nothingHere);
    const bytes = callNamed(half, name)?.bytes;
    const message = parsed(body, bytes === 'taken');
    if (!message) return refuse(response, 400, said().notJson);
    const answer = await dispatch({ project, desktop: noDesktop }, half, name, message.value);
    send(response, 200, answer, bytes === 'answered');
  }

  return {
    port,
    token,
    newAddress: () => `http://127.0.0.1:${port}/#${ticketKey}=${tickets.issue()}`,
    close: () =>
      new Promise((resolve) => {
        server.close(() => resolve());
        server.closeAllConnections();
      }),
  };
}

/** Refusals are said in the language of the time: the settings may change it. */
const said = () => plainWords().host.calls;

const statusOf: Record<Exclude<TicketCheck, 'good'>, number> = {
  used: 401,
  expired: 401,
  unknown: 401,
  'too-many': 429,
};

function listen(server: Server): Promise<number> {
  return new Promise((resolve, reject) => {
    server.once('error', reject);
    server.listen(0, '127.0.0.1', () => resolve((server.address() as AddressInfo).port));
  });
}

function windowOf(request: IncomingMessage): string {
  const header = request.headers[windowHeader];
  return typeof header === 'string' ? header.slice(0, 100) : '';
}

/** An empty body is a call without a message. */
function parsed(body: string, hasBytes: boolean): { readonly value: unknown } | null {
  try {
    return { value: body === '' ? undefined : (JSON.parse(body, hasBytes ? base64AsBytes : undefined) as unknown) };
  } catch {
    return null;
  }
}

function refuse(response: ServerResponse, status: number, message: string): void {
  send(response, status, fail('failed', message, said().startAgain));
}

function send(response: ServerResponse, status: number, result: Result<unknown>, hasBytes = false): void {
  response.writeHead(status, { 'Content-Type': 'application/json', 'Cache-Control': 'no-store' });
  response.end(JSON.stringify(result, hasBytes ? bytesAsBase64 : undefined));
}

function base64AsBytes(_key: string, part: unknown): unknown {
  if (typeof part !== 'object' || part === null || !Object.hasOwn(part, bytesKey)) return part;
  const base64 = (part as Record<string, unknown>)[bytesKey];
  return typeof base64 === 'string' ? new Uint8Array(Buffer.from(base64, 'base64')) : part;
}

function bytesAsBase64(_key: string, part: unknown): unknown {
  return part instanceof Uint8Array ? { [bytesKey]: Buffer.from(part).toString('base64') } : part;
}
