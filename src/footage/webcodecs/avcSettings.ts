/** What an H.264 film says of its frames as a whole. */
export interface AvcSettings {
  /** Some frames may be coded as fields. */
  readonly mayBeInterlaced: boolean;
  /** Whether its grey values are said to be of limited range. */
  readonly isLimited: boolean;
}

/** Profiles whose settings hold the kind of colour sampling and scaling lists (7.3.2.1.1). */
const WITH_SAMPLING = [100, 110, 122, 244, 44, 83, 86, 118, 128, 138, 139, 134, 135];
const EXTENDED_ASPECT = 255;

/**
 * Reads the first sequence parameter set of a decoder configuration record (ISO/IEC 14496-15,
 * 5.3.3.1; Rec. ITU-T H.264, 7.3.2.1 and E.1.1; from memory). Null: there is none, or it is damaged.
 */
export function avcSettings(record: Uint8Array): AvcSettings | null {
  const sets = (record[5] ?? 0) & 31;
  const length = ((record[6] ?? 0) << 8) | (record[7] ?? 0);
  if (record[0] !== 1 || sets === 0 || 8 + length > record.length) return null;
  try {
    return settingsOf(new Bits(withoutEscapes(record.subarray(9, 8 + length))));
  } catch (error) {
    if (error instanceof RangeError) return null;
    throw error;
  }
}

/** Past the one byte that names the unit. */
function settingsOf(bits: Bits): AvcSettings {
  const profile = bits.take(8);
  bits.take(16); // constraints, level
  bits.unsigned();
  if (WITH_SAMPLING.includes(profile)) skipSampling(bits);
  bits.unsigned(); // frame numbers
  skipOrderCount(bits);
  bits.unsigned(); // reference frames
  bits.take(1);
  bits.unsigned(); // width
  bits.unsigned(); // height
  const framesOnly = bits.take(1) === 1;
  if (!framesOnly) bits.take(1);
  bits.take(1);
  if (bits.take(1) === 1) for (let side = 0; side < 4; side++) bits.unsigned(); // cropping
  return { mayBeInterlaced: !framesOnly, isLimited: bits.take(1) === 1 && saysLimited(bits) };
}

function skipSampling(bits: Bits): void {
  const sampling = bits.unsigned();
  if (sampling === 3) bits.take(1);
  bits.unsigned(); // bits of luma
  bits.unsigned(); // of chroma
  bits.take(1);
  if (bits.take(1) === 0) return;
  for (let list = 0; list < (sampling === 3 ? 12 : 8); list++) {
    if (bits.take(1) === 1) skipScaling(bits, list < 6 ? 16 : 64);
  }
}

function skipScaling(bits: Bits, size: number): void {
  let last = 8;
  for (let i = 0; i < size && last !== 0; i++) last = (last + bits.signed() + 256) % 256;
}

function skipOrderCount(bits: Bits): void {
  const kind = bits.unsigned();
  if (kind === 0) bits.unsigned();
  if (kind !== 1) return;
  bits.take(1);
  bits.signed();
  bits.signed();
  for (let left = bits.unsigned(); left > 0; left--) bits.signed();
}

/** The signal's kind in the usability information. */
function saysLimited(bits: Bits): boolean {
  if (bits.take(1) === 1 && bits.take(8) === EXTENDED_ASPECT) bits.take(32);
  if (bits.take(1) === 1) bits.take(1); // overscan
  if (bits.take(1) === 0) return false;
  bits.take(3);
  return bits.take(1) === 0;
}

/** A payload without the 3 put after two zeros to keep it from looking like a start code. */
function withoutEscapes(bytes: Uint8Array): Uint8Array {
  return bytes.filter((byte, i) => !(byte === 3 && bytes[i - 1] === 0 && bytes[i - 2] === 0));
}

/** Bits from the left; throws `RangeError` past the end. */
class Bits {
  private readonly bytes: Uint8Array;
  private at = 0;

  constructor(bytes: Uint8Array) {
    this.bytes = bytes;
  }

  take(count: number): number {
    let value = 0;
    for (let i = 0; i < count; i++, this.at++) {
      const byte = this.bytes[this.at >> 3];
      if (byte === undefined) throw new RangeError('The settings end too early.');
      value = value * 2 + ((byte >> (7 - (this.at & 7))) & 1);
    }
    return value;
  }

  /** Exponential Golomb code: as many zeros as bits follow the first one. */
  unsigned(): number {
    let zeros = 0;
    while (this.take(1) === 0) zeros++;
    return 2 ** zeros - 1 + this.take(zeros);
  }

  signed(): number {
    const code = this.unsigned();
    return code % 2 === 1 ? (code + 1) / 2 : -code / 2;
  }
}
