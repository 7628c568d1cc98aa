import type { Server } from 'node:http';
import { hostname, networkInterfaces } from 'node:os';
import { serve } from '@hono/node-server';

/** Names that a browser may ask for this host by; the last is the one to give to other devices. */
export function namesOf(lan: boolean): readonly string[] {
  const own = ['localhost', '127.0.0.1', '[::1]'];
  if (!lan) return own;
  const outside = Object.values(networkInterfaces())
    .flatMap(each => each ?? [])
    .filter(each => !each.internal);
  const name = hostname().toLowerCase();
  return [
    ...own,
    name,
    `${name}.local`,
    ...outside.filter(each => each.family === 'IPv6').map(each => `[${each.address}]`),
    ...outside.filter(each => each.family === 'IPv4').map(each => each.address),
  ];
}

/** A server that listens, to this machine only or to its networks too, and that nobody can hold up for long. */
export const listen = (fetch: Parameters<typeof serve>[0]['fetch'], port: number, lan: boolean): Promise<Server> =>
  new Promise((listening, failed) => {
    const server = serve({ fetch, port, hostname: lan ? '0.0.0.0' : '127.0.0.1' }, () => listening(server)) as Server;
    server.headersTimeout = 10_000;
    server.requestTimeout = 20_000;
    server.maxConnections = 500;
    server.once('error', failed);
  });

export function portOf(server: Server): number {
  const address = server.address();
  return typeof address === 'object' && address !== null ? address.port : 0;
}

export const stop = (server: Server): Promise<void> =>
  new Promise(stopped => {
    server.close(() => stopped());
    // Pages that follow keep their line open for ever.
    server.closeAllConnections();
  });
