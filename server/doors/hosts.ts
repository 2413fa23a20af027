import { isIP } from 'node:net';
import { networkInterfaces } from 'node:os';

const LOOPBACK_V4 = /^127(?:\.\d{1,3}){3}$/;
const HOST_HEADER = /^(\[[0-9a-f:.]+\]|[a-z0-9.-]+)(?::(\d{1,5}))?$/i;

/** A name or address that only this machine answers to. */
export const isLoopbackName = (name: string): boolean =>
  name === 'localhost' || name === '[::1]' || name === '::1' || LOOPBACK_V4.test(name);

/** True when a call comes from this very machine; `address` as a socket reports it. */
export const isLoopbackAddress = (address: string | undefined): boolean =>
  address === '::1' || LOOPBACK_V4.test((address ?? '').replace(/^::ffff:/, ''));

/** An IP address as it stands in a URL. */
export const inUrl = (address: string): string => (isIP(address) === 6 ? `[${address}]` : address);

/** Addresses of this machine in its networks, as they stand in a URL; link-local ones need a zone and are left out. */
const networkAddresses = (): string[] =>
  Object.values(networkInterfaces())
    .flatMap((list) => list ?? [])
    .filter(({ internal, address }) => !internal && !address.startsWith('fe80'))
    .map(({ address }) => inUrl(address));

/** Where other machines find a server that listens on `host`: everywhere, on all of IPv4, or at one name or address. */
export function calledFromOutside(host: string): string[] {
  if (host === '::' || host === '[::]') return networkAddresses();
  if (host === '0.0.0.0') return networkAddresses().filter((address) => !address.startsWith('['));
  return [inUrl(host.toLowerCase())];
}

/** Host header or authority of an origin in two parts, or undefined when it is neither a name nor an address. */
export function hostAndPort(text: string): { name: string; port: number } | undefined {
  const match = HOST_HEADER.exec(text);
  return match?.[1] ? { name: match[1].toLowerCase(), port: Number(match[2] ?? 80) } : undefined;
}
