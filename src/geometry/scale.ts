import type { Estimate } from '../core/estimate';
import { failure, type Outcome, success } from '../core/reason';
import type { Metres, MetresPerPixel, Pixels } from '../core/units';
import type { Warning } from '../shot/result';
import type { KnownLength, Scale } from '../shot/schema';

/** One independent cause of the scale's uncertainty, as a share of the scale. */
export interface ScaleSource {
  readonly source: string;
  readonly type: 'B';
  readonly u: number;
  readonly dof: null;
}

/** Metres per pixel on the flight line, and what its uncertainty is made of. */
export interface ScaleReport extends Estimate {
  readonly sources: readonly ScaleSource[];
  /** What each known length alone would give. */
  readonly lengths: readonly (Estimate & { readonly pixels: Pixels })[];
  /** Chi-square between the lengths, its degrees of freedom; null for a single length. */
  readonly consistency: { readonly chiSquare: number; readonly dof: number } | null;
  readonly warnings: readonly Warning[];
}

/** Lengths are called inconsistent beyond this share of the chi-square distribution's bulk: mean + 3 sd. */
const inconsistentAbove = (dof: number): number => dof + 3 * Math.sqrt(2 * dof);

/**
 * Scale on the flight line from all known lengths, weighted by their own uncertainties.
 * A length lying `depthOffset` behind the flight line, seen from `cameraDistance` (lens to flight line), looks
 * smaller by distance / (distance + offset). Where lengths disagree, the uncertainty grows by the Birge ratio.
 * Failures: `zeroLength`, `lengthTooUncertain`, `planeNotAvailable`, `lensNotAvailable`.
 */
export function determineScale(scale: Scale): Outcome<ScaleReport> {
  if (scale.plane !== null) {
    return failure(
      'planeNotAvailable',
      'The shot states a rectified plane, which this version cannot apply.',
      'Remove "scale.plane" and film square to the flight line.',
    );
  }
  if (scale.lens !== null) {
    return failure(
      'lensNotAvailable',
      'The shot states a lens distortion, which this version cannot apply.',
      'Remove "scale.lens" and keep the flight near the middle of a long lens.',
    );
  }
  const distance = scale.cameraDistance;
  const each = scale.lengths.map((length) => oneLength(length, distance));
  const bad = each.indexOf(null);
  if (bad >= 0) {
    return failure(
      'zeroLength',
      `Known length ${bad + 1} has its two ends on the same pixel.`,
      'Drag its two ends apart, onto the two marks.',
    );
  }
  const parts = each.filter((one) => one !== null);
  const vague = parts.findIndex((part) => !(part.relativeU < 1));
  if (vague >= 0) {
    return failure(
      'lengthTooUncertain',
      `Known length ${vague + 1} is stated with an uncertainty as large as itself.`,
      'Check the uncertainties of the length, its ends, its depth and the camera distance.',
    );
  }
  const weights = parts.map((part) => 1 / (part.value * part.relativeU) ** 2);
  const anyExact = parts.some((part) => part.relativeU === 0);
  const sum = anyExact ? parts.length : weights.reduce((a, b) => a + b, 0);
  const shares = anyExact ? parts.map(() => 1 / sum) : weights.map((w) => w / sum);
  const value = parts.reduce((mean, part, i) => mean + part.value * (shares[i] as number), 0);

  const dof = parts.length - 1;
  const chiSquare = parts.reduce(
    (chi, part) =>
      part.relativeU > 0 ? chi + ((part.value - value) / (part.value * part.relativeU)) ** 2 : chi,
    0,
  );
  const warnings: Warning[] = [];
  const birge = dof > 0 ? Math.sqrt(Math.max(1, chiSquare / dof)) : 1;
  if (dof > 0 && chiSquare > inconsistentAbove(dof)) {
    warnings.push({
      code: 'lengthsDisagree',
      message: `The known lengths disagree by more than their uncertainties (chi-square ${chiSquare.toFixed(1)} for ${dof}).`,
      remedy:
        'Check the ends of each length, its stated value, and that all lie in the flight plane.',
    });
  }
  if (distance === null) {
    warnings.push({
      code: 'parallaxUnknown',
      message:
        'The camera distance is not given, so the effect of a scale in front of or behind the flight line is left out.',
      remedy: 'Measure the distance from lens to flight line and type it.',
    });
  }
  const weighted = (pick: (part: OneLength) => number): number[] =>
    parts.map((part, i) => (shares[i] as number) * pick(part) * birge);
  const combined = (pick: (part: OneLength) => number): number => Math.hypot(...weighted(pick));
  const sources: ScaleSource[] = [
    source(
      'known length',
      combined((part) => part.lengthU),
    ),
    source(
      'ends of the known length',
      combined((part) => part.endpointU),
    ),
    source(
      'depth of the known length',
      combined((part) => part.depthU),
    ),
    // The one distance moves all lengths together, those in front and behind the flight line in opposite senses.
    source(
      'camera distance',
      Math.abs(weighted((part) => part.byDistance).reduce((a, b) => a + b)),
    ),
  ].filter((entry) => entry.u > 0);
  return success({
    value,
    u: value * Math.hypot(...sources.map((entry) => entry.u)),
    sources,
    lengths: parts.map((part) => ({
      value: part.value,
      u: part.value * part.relativeU,
      pixels: part.pixels,
    })),
    consistency: dof > 0 ? { chiSquare, dof } : null,
    warnings,
  });
}

const source = (name: string, u: number): ScaleSource => ({
  source: name,
  type: 'B',
  u,
  dof: null,
});

interface OneLength {
  readonly value: MetresPerPixel;
  readonly pixels: Pixels;
  readonly relativeU: number;
  readonly lengthU: number;
  readonly endpointU: number;
  readonly depthU: number;
  /** Change for one standard uncertainty of the camera distance, signed. */
  readonly byDistance: number;
}

function oneLength(length: KnownLength, distance: Scale['cameraDistance']): OneLength | null {
  const pixels = Math.hypot(length.to[0] - length.from[0], length.to[1] - length.from[1]);
  if (pixels < 1) return null;
  const behind: Metres = length.depthOffset;
  const parallax = distance === null ? 1 : distance.value / (distance.value + behind);
  const lengthU = length.u / length.length;
  const endpointU = (Math.SQRT2 * length.endpointU) / pixels;
  const depthU = distance === null ? 0 : length.depthOffsetU / (distance.value + behind);
  const byDistance =
    distance === null ? 0 : (behind * distance.u) / (distance.value * (distance.value + behind));
  return {
    value: (length.length / pixels) * parallax,
    pixels,
    relativeU: Math.hypot(lengthU, endpointU, depthU, byDistance),
    lengthU,
    endpointU,
    depthU,
    byDistance,
  };
}
