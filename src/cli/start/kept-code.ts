import { readFileSync } from 'node:fs';
import { crc32 } from 'node:zlib';

/** Before the code stands its checksum. */
const CHECKSUM_BYTES = 4;

/** The first line of a piece that the build has made: a hash of all the others. */
const IDENTITY_BYTES = 20;

/** The checksum of code and of the script that it was compiled from, so that neither is used with another. */
export const checksum = (source: Uint8Array, code: Uint8Array): number =>
  crc32(code, crc32(source.subarray(0, IDENTITY_BYTES)));

/**
 * The compiled code that the build kept for a source; nothing where there is none or where a byte of it is not as it was written.
 * V8 refuses by itself what another version of it has made, but would run damaged code.
 */
export function keptCode(source: Uint8Array, file: string): Uint8Array | undefined {
  try {
    const kept = readFileSync(file);
    const code = kept.subarray(CHECKSUM_BYTES);
    // Before Node 20.15 there is no checksum, and an error is thrown.
    return kept.readUInt32LE(0) === checksum(source, code) ? code : undefined;
  } catch {
    return undefined;
  }
}
