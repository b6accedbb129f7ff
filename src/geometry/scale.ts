import type { Estimate } from '../core/estimate';
import { type Outcome, success } from '../core/reason';
import type { ImagePoint, Pixels } from '../core/units';
import type { Warning } from '../shot/result';
import type { Scale } from '../shot/schema';
import { type OneLength, oneLength, spanOf } from './knownLength';
import { buildView, type FrameShape, type View } from './view';
import { viewCauses } from './viewCauses';

/** One independent cause of the scale's uncertainty, as a share of the scale. */
export interface ScaleSource {
  readonly source: string;
  readonly type: 'B';
  readonly u: number;
  readonly dof: null;
  /** The unit it is stated in, and the share of the scale that one of it makes; null: several went into it. */
  readonly stated: { readonly unit: string; readonly share: number } | null;
  /** Whether it also moves every point by an amount of its own: a cause of `viewCauses`, carried there. */
  readonly throughView: boolean;
}

/** Metres per flat pixel on the flight line, and what its uncertainty is made of. */
export interface ScaleReport extends Estimate {
  readonly view: View;
  readonly sources: readonly ScaleSource[];
  /** What each known length alone would give. */
  readonly lengths: readonly (Estimate & { readonly pixels: Pixels })[];
  /** Chi-square between the lengths (and the plane), its degrees of freedom; null where there is nothing to compare. */
  readonly consistency: { readonly chiSquare: number; readonly dof: number } | null;
  readonly warnings: readonly Warning[];
}

/** Measurements are called inconsistent beyond this share of the chi-square distribution's bulk: mean + 3 sd. */
const inconsistentAbove = (dof: number): number => dof + 3 * Math.sqrt(2 * dof);

/**
 * Scale on the flight line of a film with its muzzle at the given point. Known lengths are weighted by their own
 * uncertainties. A length lying `depthOffset` behind the flight line, seen from `cameraDistance` (lens to flight
 * line), looks smaller by distance / (distance + offset). Where lengths disagree, the uncertainty grows by the
 * Birge ratio. A plane of known size sets the scale by itself; known lengths are then held against it.
 * Failures: `zeroLength`, `lengthTooUncertain`, and those of `buildView`.
 */
export function determineScale(
  scale: Scale,
  frame: FrameShape,
  muzzle: ImagePoint,
): Outcome<ScaleReport> {
  const nominal = nominalScale(scale, frame, muzzle);
  if (!nominal.ok) return nominal;
  const { value, sources, warnings } = nominal.value;
  const shares = new Map<string, number>();
  for (const { source, up, down } of viewCauses(scale)) {
    const above = nominalScale(up, frame, muzzle);
    if (!above.ok) return above;
    const below = nominalScale(down, frame, muzzle);
    if (!below.ok) return below;
    const share = (above.value.value - below.value.value) / (2 * value);
    shares.set(source, Math.hypot(shares.get(source) ?? 0, share));
  }
  const all = [
    ...sources,
    ...[...shares].map(([name, u]) => ({ ...source(name, u), throughView: true })),
  ].filter((one) => one.u > 0);
  const u = value * Math.hypot(...all.map((one) => one.u));
  const report = { ...nominal.value, sources: all, u };
  return success(
    scale.plane === null
      ? { ...report, warnings: [...warnings, ...distanceCheck(scale, report)] }
      : againstLengths(report, scale, frame, muzzle),
  );
}

/** The scale with what is its own alone: what lens and plane are not known to is left out. */
export function nominalScale(
  scale: Scale,
  frame: FrameShape,
  muzzle: ImagePoint,
): Outcome<ScaleReport> {
  const view = buildView(scale, frame, muzzle);
  if (!view.ok) return view;
  const { metresPerPixel } = view.value;
  if (metresPerPixel === null) return fromLengths(scale, view.value);
  return success({
    view: view.value,
    value: metresPerPixel,
    u: 0,
    sources: [],
    lengths: [],
    consistency: null,
    warnings: [],
  });
}

function fromLengths(scale: Scale, view: View): Outcome<ScaleReport> {
  const each: OneLength[] = [];
  for (const [i, length] of scale.lengths.entries()) {
    const one = oneLength(length, i + 1, scale, view);
    if (!one.ok) return one;
    each.push(one.value);
  }
  return success(combineLengths(each, scale, view));
}

function combineLengths(parts: readonly OneLength[], scale: Scale, view: View): ScaleReport {
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
      values: { chiSquare: chiSquare.toFixed(1), dof },
    });
  }
  if (scale.cameraDistance === null && view.camera === null) {
    warnings.push({
      code: 'parallaxUnknown',
      message:
        'Neither camera distance nor focal length is given, so the effect of a scale in front of or behind the flight line is left out.',
      remedy: 'Measure the distance from lens to flight line and type it.',
    });
  }
  const weighted = (pick: (part: OneLength) => number): number[] =>
    parts.map((part, i) => (shares[i] as number) * pick(part) * birge);
  const combined = (pick: (part: OneLength) => number): number => Math.hypot(...weighted(pick));
  const only = parts.length === 1 ? scale.lengths[0] : undefined;
  const sources: ScaleSource[] = [
    source(
      'known length',
      combined((part) => part.lengthU),
      only?.u,
      'm',
    ),
    source(
      'ends of the known length',
      combined((part) => part.endpointU),
      only?.endpointU,
      'px',
    ),
    source(
      'depth of the known length',
      combined((part) => part.depthU),
      only?.depthOffsetU,
      'm',
    ),
    // The one distance moves all lengths together, those in front and behind the flight line in opposite senses.
    source(
      'camera distance',
      Math.abs(weighted((part) => part.byDistance).reduce((a, b) => a + b)),
      view.camera === null ? scale.cameraDistance?.u : undefined,
      'm',
    ),
  ].filter((entry) => entry.u > 0);
  return {
    view,
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
  };
}

/** A source of `u`, a share of the scale, that comes from one input known to `own`, in `unit`; else from several. */
const source = (name: string, u: number, own?: number, unit = '1'): ScaleSource => ({
  source: name,
  type: 'B',
  u,
  dof: null,
  stated: own === undefined ? null : { unit, share: u / own },
  throughView: false,
});

/** Focal length and camera distance held against each other, where both are given. */
function distanceCheck(
  { lens, cameraDistance }: Scale,
  { view, value, u }: ScaleReport,
): Warning[] {
  if (view.camera === null || lens === null || cameraDistance === null) return [];
  const told = (view.camera.offset / view.camera.normal[2]) * value;
  const relativeU = Math.hypot(lens.focal.u / lens.focal.value, u / value);
  if (Math.abs(told - cameraDistance.value) < 3 * Math.hypot(told * relativeU, cameraDistance.u)) {
    return [];
  }
  return [
    {
      code: 'distancesDisagree',
      message: `By the lens's focal length the flight line is ${told.toFixed(3)} m away, but ${cameraDistance.value} m are stated; the focal length is used.`,
      values: { told: told.toFixed(3), stated: `${cameraDistance.value}` },
      remedy:
        'Measure from the lens to the flight line, and check that zoom and focus are those the lens was calibrated at.',
    },
  ];
}

/** A plane's scale with the known lengths held against it. A length at another depth is measured on the plane there. */
function againstLengths(
  report: ScaleReport,
  scale: Scale,
  frame: FrameShape,
  muzzle: ImagePoint,
): ScaleReport {
  const { plane } = scale;
  if (plane === null) return report;
  const warnings: Warning[] = [...distanceCheck(scale, report)];
  if (report.view.camera === null) {
    warnings.push({
      code: 'parallaxUnknown',
      message:
        'Neither camera distance nor focal length is given, so the depth of the marked plane before or behind the flight line is left out, and so is how perspective draws out the ball.',
      remedy: 'Measure the distance from lens to flight line and type it, or calibrate the lens.',
    });
  }
  const misfit = report.view.planeMisfit;
  if (misfit !== null && misfit > inconsistentAbove(2) * plane.cornerU ** 2) {
    const off = Math.sqrt(misfit / 2).toFixed(1);
    warnings.push({
      code: 'notARectangle',
      values: {
        ...{ width: `${plane.width}`, height: `${plane.height}` },
        ...{ off, cornerU: `${plane.cornerU}` },
      },
      message: `The four corners miss those of any ${plane.width} m by ${plane.height} m rectangle by ${off} px, with ${plane.cornerU} px stated for each.`,
      remedy:
        'Check each corner, whether width and height are the right way round, and the calibration of the lens.',
    });
  }
  const lengths: (Estimate & { pixels: Pixels })[] = [];
  let chiSquare = 0;
  for (const [i, length] of scale.lengths.entries()) {
    const depthOffset = plane.depthOffset - length.depthOffset;
    const there = buildView({ ...scale, plane: { ...plane, depthOffset } }, frame, muzzle);
    if (!there.ok) continue;
    const span = spanOf(length, i + 1, there.value);
    if (!span.ok) continue;
    const { pixels, endpointU } = span.value;
    const metres = pixels * (there.value.metresPerPixel ?? report.value);
    const { camera } = report.view;
    const depthU = camera === null ? 0 : length.depthOffsetU / (camera.offset * report.value);
    const relativeU = Math.hypot(length.u / length.length, endpointU, depthU);
    const ratio = length.length / metres;
    lengths.push({ value: report.value * ratio, u: report.value * relativeU, pixels });
    chiSquare += (ratio - 1) ** 2 / (relativeU ** 2 + (report.u / report.value) ** 2);
  }
  const dof = lengths.length;
  if (dof > 0 && chiSquare > inconsistentAbove(dof)) {
    warnings.push({
      code: 'planeDisagrees',
      message: `The known lengths and the marked plane disagree by more than their uncertainties (chi-square ${chiSquare.toFixed(1)} for ${dof}); the plane sets the scale.`,
      remedy:
        'Check the corners, width and height of the plane, the ends of each length, and how deep each lies.',
      values: { chiSquare: chiSquare.toFixed(1), dof },
    });
  }
  return {
    ...report,
    lengths,
    consistency: dof > 0 ? { chiSquare, dof } : null,
    warnings,
  };
}
