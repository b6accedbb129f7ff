import { createHash } from 'node:crypto';
export const hashOf = (data: Uint8Array | Uint16Array): string =>
  createHash('sha256')
    .update(new Uint8Array(data.buffer, data.byteOffset, data.byteLength))
    .digest('hex')
    .slice(0, 16);
