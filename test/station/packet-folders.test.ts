import { mkdir, mkdtemp, rm, symlink, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { beforeEach, describe, expect, it } from 'vitest';
import { machine } from '../../src/machine.ts';
import { openPacketFolders } from '../../src/station/packet-folders.ts';
import { aManifest } from '../support/manifest.ts';

let root: string;
beforeEach(async () => {
  root = await mkdtemp(join(tmpdir(), 'packets-'));
  return () => rm(root, { recursive: true, force: true });
});

async function put(folder: string, manifest: unknown): Promise<void> {
  await mkdir(join(root, folder), { recursive: true });
  await writeFile(
    join(root, folder, 'manifest.json'),
    typeof manifest === 'string' ? manifest : JSON.stringify(manifest),
  );
}

const revisions = (folders: ReturnType<typeof openPacketFolders>) =>
  [...folders.shelf().jobs.values()].map(({ book, earlier }) =>
    [book.job, book.revision, ...earlier.map(each => each.revision)].join(' '),
  );

describe('the packets that a station knows', () => {
  it('come by themselves, revision after revision, Z before AA, and go with their folder', async () => {
    const folders = openPacketFolders([], root, machine);
    await folders.look();
    expect(revisions(folders)).toEqual([]);
    for (const revision of ['A', 'AA', 'Z']) await put(`K7/${revision}`, aManifest({ revision }));
    await folders.look();
    expect(revisions(folders)).toEqual(['K7 AA Z A']);
    await rm(join(root, 'K7/AA'), { recursive: true });
    await folders.look();
    expect(revisions(folders)).toEqual(['K7 Z A']);
  });

  it('are those of single folders too', async () => {
    await put('elsewhere', aManifest({ number: 'K8' }));
    const folders = openPacketFolders([join(root, 'elsewhere'), join(root, 'nowhere')], undefined, machine);
    await folders.look();
    expect(revisions(folders)).toEqual(['K8 A']);
    expect(folders.problems()).toEqual([]);
  });

  it('stay as they were while a manifest is broken, which is said', async () => {
    const folders = openPacketFolders([], root, machine);
    await put('K7/A', aManifest());
    await folders.look();
    await put('K7/A', '{"schemaVersion": 1');
    await put('K7/B', { ...aManifest({ revision: 'B' }), doors: 'none' });
    await folders.look();
    expect(revisions(folders)).toEqual(['K7 A']);
    expect(folders.problems().map(each => each.file)).toEqual([
      join(root, 'K7/A/manifest.json'),
      join(root, 'K7/B/manifest.json'),
    ]);
    expect(folders.problems()[1]?.what).toContain('doors');
    await put('K7/B', aManifest({ revision: 'B' }));
    await put('K7/A', aManifest());
    await folders.look();
    expect(revisions(folders)).toEqual(['K7 B A']);
    expect(folders.problems()).toEqual([]);
  });

  it('are not looked for in what is still being written, nor behind links', async () => {
    await put('.K7.part/A', aManifest());
    await put('K9/.A.part', aManifest({ number: 'K9' }));
    const outside = await mkdtemp(join(tmpdir(), 'outside-'));
    await mkdir(join(outside, 'A'));
    await writeFile(join(outside, 'A', 'manifest.json'), JSON.stringify(aManifest({ number: 'K10' })));
    await symlink(outside, join(root, 'K10'));
    const folders = openPacketFolders([], root, machine);
    await folders.look();
    expect(revisions(folders)).toEqual([]);
    await rm(outside, { recursive: true });
  });
});
