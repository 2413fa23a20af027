import { createHash } from 'node:crypto';

/** Strong entity tag of some bytes: the same bytes always have the same one. */
export const etagOf = (bytes: Uint8Array): string =>
  `"${createHash('sha256').update(bytes).digest('base64url').slice(0, 32)}"`;

/**
 * Does an `If-Match` or `If-None-Match` header name this version? `*` names any that exists.
 * Weak tags never match strongly (RFC 9110, 8.8.3.2).
 */
export function names(header: string, etag: string | null): boolean {
  if (etag === null) return false;
  const tags = header.split(',').map((tag) => tag.trim());
  return tags.includes('*') || tags.includes(etag);
}
