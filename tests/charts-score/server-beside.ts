import { spawn } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

/** The program itself, on a free port, with a data folder that goes with it. */
export async function startServer(): Promise<{ base: string; stop: () => void }> {
  const folder = mkdtempSync(join(tmpdir(), 'blower-bench-charts-'));
  const child = spawn(
    process.execPath,
    ['--import', 'tsx', fileURLToPath(new URL('../../server/main.ts', import.meta.url))],
    {
      env: { ...process.env, PORT: '0', HOST: '127.0.0.1', DATA_DIR: folder },
      stdio: ['ignore', 'pipe', 'inherit'],
    },
  );
  const stop = () => {
    child.kill('SIGTERM');
    rmSync(folder, { recursive: true, force: true });
  };
  const base = await new Promise<string>((resolve, reject) => {
    let said = '';
    child.stdout.on('data', (part: Buffer) => {
      said += part.toString();
      const ready = /ready: (http:\S+)/.exec(said);
      if (ready) resolve(ready[1]!);
    });
    child.once('exit', (code) => reject(new Error(`The server ended with ${code}: ${said}`)));
  });
  return { base, stop };
}
