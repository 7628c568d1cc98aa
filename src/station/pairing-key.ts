import { randomBytes } from 'node:crypto';
import { mkdir } from 'node:fs/promises';
import { join } from 'node:path';
import type { Host } from '../host.ts';

/**
 * Signs what paired devices carry. Where the file is deleted, or a crash of the machine has left it short, a new key is
 * made, and every device has to be paired anew.
 */
export async function pairingKey(data: string, host: Pick<Host, 'read' | 'writeFile'>): Promise<Uint8Array> {
  const file = join(data, 'pairing.key');
  const kept = await host.read(file).catch(absent);
  if (kept.length === KEY_BYTES) return kept;
  const key = randomBytes(KEY_BYTES);
  await mkdir(data, { recursive: true });
  await host.writeFile(file, key, 'secret');
  return key;
}

const KEY_BYTES = 32;

function absent(refused: unknown): Uint8Array {
  if (refused instanceof Error && 'code' in refused && refused.code === 'ENOENT') return new Uint8Array();
  throw refused;
}
