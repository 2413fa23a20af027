import { resolve } from 'node:path';
import { parseArgs } from 'node:util';
import { isLoopbackName } from './doors/hosts.ts';

export type Options = {
  port: number;
  host: string;
  dataFolder: string;
  /** serve the page from its sources */
  isDevelopment: boolean;
  /** other machines may call, with the key */
  isOnNetwork: boolean;
};

/** Something in the environment or on the command line that cannot be followed; the message is for the user. */
export class BadOption extends Error {}

function portFrom(text: string): number {
  const port = Number(text);
  if (/^\d+$/.test(text) && port <= 65535) return port;
  throw new BadOption(`PORT must be a whole number from 0 to 65535; "${text}" is none.`);
}

function flagsIn(args: string[]): { dev: boolean; network: boolean } {
  try {
    const { values } = parseArgs({ args, options: { dev: { type: 'boolean' }, network: { type: 'boolean' } } });
    return { dev: values.dev ?? false, network: values.network ?? false };
  } catch (error) {
    throw new BadOption(`${(error as Error).message} The switches are --dev and --network.`);
  }
}

/**
 * What the program is to do, from the environment (`PORT`, `HOST`, `DATA_DIR`) and the command line.
 * A `HOST` beyond this machine switches the network on, as `--network` does.
 * @throws BadOption
 */
export function optionsFrom(environment: NodeJS.ProcessEnv, args: string[]): Options {
  const { dev, network } = flagsIn(args);
  const host = environment['HOST'] || (network ? '0.0.0.0' : '127.0.0.1');
  return {
    port: portFrom(environment['PORT'] || '8377'),
    host,
    dataFolder: resolve(environment['DATA_DIR'] || 'data'),
    isDevelopment: dev,
    isOnNetwork: network || !isLoopbackName(host),
  };
}
