import { writeFile } from 'node:fs/promises';
import type { Browser, BrowserContext } from 'playwright-core';
import { launchBrowser } from './browser.ts';

/** A browser with a camera that plays a film, over and over, and a page's way to it. */
export type Filming = {
  readonly browser: Browser;
  readonly context: (options?: { readonly permissions: readonly string[] }) => Promise<BrowserContext>;
};

/**
 * The browser's own stand-in for a camera, which reads the film from a file; in a browser that is built without any
 * cameras, as the one from the registry is, a stand-in of ours in each page.
 */
export async function launchFilming(film: readonly Buffer[], file: string): Promise<Filming> {
  await writeFile(file, Buffer.concat(film));
  const browser = await launchBrowser([
    '--use-fake-device-for-media-stream',
    `--use-file-for-fake-video-capture=${file}`,
  ]);
  const hasCameras = await knowsCameras(browser);
  return {
    browser,
    context: async ({ permissions } = { permissions: [] }) => {
      const context = await browser.newContext({ permissions: [...permissions] });
      if (!hasCameras)
        await context.addInitScript(
          standIn,
          film.map(frame => frame.toString('base64')),
        );
      return context;
    },
  };
}

async function knowsCameras(browser: Browser): Promise<boolean> {
  const page = await browser.newPage();
  // A page of no host at all is not secure: this one is.
  await page.route('http://localhost/', route => route.fulfill({ contentType: 'text/html', body: '' }));
  await page.goto('http://localhost/');
  const refusal = await page.evaluate(() =>
    navigator.mediaDevices.getUserMedia({ video: true }).then(
      () => '',
      ({ name }: DOMException) => name,
    ),
  );
  await page.close();
  return refusal !== 'NotSupportedError';
}

/** Runs in the page: what asks for a camera gets a picture that is painted there, where it has the permission. */
function standIn(film: readonly string[]): void {
  if (navigator.mediaDevices === undefined) return;
  navigator.mediaDevices.getUserMedia = async () => {
    const { state } = await navigator.permissions.query({ name: 'camera' as PermissionName });
    if (state !== 'granted') throw new DOMException('refused', 'NotAllowedError');
    const pictures = await Promise.all(
      film.map(frame => createImageBitmap(new Blob([Uint8Array.from(atob(frame), sign => sign.charCodeAt(0))]))),
    );
    const canvas = document.createElement('canvas');
    [canvas.width, canvas.height] = [pictures[0]?.width ?? 0, pictures[0]?.height ?? 0];
    let at = 0;
    setInterval(() => {
      const picture = pictures[at++ % pictures.length];
      if (picture !== undefined) canvas.getContext('2d')?.drawImage(picture, 0, 0);
    }, 1000 / 30);
    return canvas.captureStream(30);
  };
}
