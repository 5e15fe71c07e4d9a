export type Encoding = 'utf-8' | 'utf-16le' | 'utf-16be' | 'latin-1';

/**
 * The text encoding of a file: by its mark, else by the zero bytes that UTF-16 puts between ASCII
 * characters, else UTF-8 where the bytes are valid UTF-8, else Latin-1, which any bytes are.
 *
 * @param bytes - the whole file; a UTF-8 character cut at its end doesn't count against it.
 */
export function detectEncoding(bytes: Uint8Array): Encoding {
  const [first, second] = bytes;
  if (first === 0xff && second === 0xfe) return 'utf-16le';
  if (first === 0xfe && second === 0xff) return 'utf-16be';
  const zeros = zeroShares(bytes.subarray(0, 4096));
  if (zeros.odd > 0.4 && zeros.even < 0.05) return 'utf-16le';
  if (zeros.even > 0.4 && zeros.odd < 0.05) return 'utf-16be';
  return isUtf8(bytes) ? 'utf-8' : 'latin-1';
}

/** Shares of zero bytes among those at even and at odd places, 0 to 1. */
function zeroShares(bytes: Uint8Array): { even: number; odd: number } {
  const zeros = [0, 0];
  for (let i = 0; i < bytes.length; i++) if (bytes[i] === 0) zeros[i & 1]!++;
  const pairs = Math.max(1, bytes.length / 2);
  return { even: zeros[0]! / pairs, odd: zeros[1]! / pairs };
}

function isUtf8(bytes: Uint8Array): boolean {
  try {
    // `stream` lets a character cut by the end of the file pass.
    new TextDecoder('utf-8', { fatal: true }).decode(bytes, { stream: true });
    return true;
  } catch {
    return false;
  }
}
