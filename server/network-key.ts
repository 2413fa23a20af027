import { randomBytes } from 'node:crypto';
import { mkdir, readFile, writeFile } from 'node:fs/promises';
import { join } from 'node:path';

/**
 * The key other machines need, kept in the data folder so that a phone that was let in once stays in.
 * Deleting the file shuts everybody out.
 */
export async function networkKey(dataFolder: string): Promise<string> {
  const file = join(dataFolder, 'network-key');
  const kept = await readFile(file, 'utf8').catch(() => '');
  if (/^[A-Za-z0-9_-]{20,}$/.test(kept)) return kept;
  const key = randomBytes(18).toString('base64url');
  await mkdir(dataFolder, { recursive: true });
  await writeFile(file, key, { mode: 0o600 });
  return key;
}
