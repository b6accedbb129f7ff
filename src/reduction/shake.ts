import { median } from '../core/statistics';
import type { ImagePoint, ImageRect, ImageVector, Pixels } from '../core/units';
import type { Shift } from '../image/registration';
import type { ShakeReport, Warning } from '../shot/result';

/** What one frame told of the scene's and the launcher's place; null: nothing. */
export interface FramePlace {
  readonly shift: Shift | null;
  readonly launcher: Shift | null;
}

/** The still scene over the whole film. Translation only: a camera that turns about its line of sight is not modelled. */
export interface Shake {
  readonly report: ShakeReport | null;
  /** What is taken off a place in a frame, with its covariance; zero where the scene does not shake. */
  shiftIn(frame: number): Shift;
  /** Null: the frame was not looked at. */
  readonly places: readonly (FramePlace | null)[];
}

/** Share of the frames looked at that must tell the scene's place. */
const LEAST_SHARE = 0.5;
/** Shaking smaller than this each way is not told from none, px. */
const LEAST_SHAKE = 0.01;
const STEADY: Shift = { x: 0, y: 0, varX: 0, varY: 0, covXY: 0 };

/** Codecs that code every frame by itself; the others draw frames from each other, moved by steps of a quarter pixel. */
const BY_ITSELF =
  /^(mjpe?g|jpe?g|png|tiff?|bmp|gif|ffv1|huffyuv|ffvhuff|utvideo|prores|dnxhd|dnxhr|cfhd|raw|v210)/i;
/**
 * Error of a shift that such steps leave, px each way: all parts of the picture share it, so no residual tells it.
 * Measured on drawn scenes that shake, coded by x264: 0.018 px at CRF 18, 0.028 at 23, 0.055 at 28.
 */
const CODED_U = 0.03;

/** Standard uncertainty that a film's coding adds to every shift, px each way. */
export const codedShiftU = (codec: string): Pixels => (BY_ITSELF.test(codec) ? 0 : CODED_U);

/**
 * Shaking from the shifts measured frame by frame. Each is weighed against how much the film shakes at all: a steady
 * film gains no noise from it, and a frame whose shift is not known may be off by as much as the others are.
 * `codedU`: see `codedShiftU`.
 */
export function judgeShake(measured: readonly (FramePlace | null)[], codedU: Pixels): Shake {
  const widened = (shift: Shift | null): Shift | null =>
    shift === null
      ? null
      : { ...shift, varX: shift.varX + codedU ** 2, varY: shift.varY + codedU ** 2 };
  const places = measured.map(
    (place) => place && { shift: widened(place.shift), launcher: widened(place.launcher) },
  );
  const looked = places.filter((place) => place !== null);
  const known = looked.flatMap(({ shift }) => (shift === null ? [] : [shift]));
  if (known.length < Math.max(3, LEAST_SHARE * looked.length)) {
    return { report: null, shiftIn: () => STEADY, places };
  }
  const shakeX = shaking(known.map(({ x, varX }) => [x, varX]));
  const shakeY = shaking(known.map(({ y, varY }) => [y, varY]));
  const shifts = places.map((place): Shift => {
    const shift = place?.shift ?? null;
    if (shift === null) return { ...STEADY, varX: shakeX, varY: shakeY };
    const wx = shakeX / (shakeX + shift.varX || 1);
    const wy = shakeY / (shakeY + shift.varY || 1);
    return {
      x: wx * shift.x,
      y: wy * shift.y,
      varX: wx * shift.varX,
      varY: wy * shift.varY,
      covXY: Math.sqrt(wx * wy) * shift.covXY,
    };
  });
  return {
    report: {
      rms: Math.sqrt(shakeX + shakeY),
      most: shifts.reduce((most, { x, y }) => Math.max(most, Math.hypot(x, y)), 0),
      u: median(known.map(({ varX, varY }) => Math.sqrt((varX + varY) / 2))),
    },
    shiftIn: (frame) => shifts[frame] ?? STEADY,
    places,
  };
}

/** Mean square of the shifts beyond their own variance, px^2; 0 where there is no telling. */
function shaking(known: readonly (readonly [shift: number, variance: number])[]): number {
  const excess = known.reduce((sum, [s, v]) => sum + (s * s - v) / known.length, 0);
  return excess > LEAST_SHAKE ** 2 ? excess : 0;
}

/** A place in the image with its covariance, the scene's shift taken off. */
export const steadied = <
  P extends {
    readonly x: Pixels;
    readonly y: Pixels;
    readonly varX: number;
    readonly varY: number;
    readonly covXY: number;
  },
>(
  point: P,
  shift: Shift,
): P => ({
  ...point,
  x: point.x - shift.x,
  y: point.y - shift.y,
  varX: point.varX + shift.varX,
  varY: point.varY + shift.varY,
  covXY: point.covXY + shift.covXY,
});

/** The launcher is looked for this far behind the muzzle plane and to each side of the axis, radii. */
const LAUNCHER_BEHIND = 10;
const LAUNCHER_ASIDE = 3;
/** This close to the muzzle plane seal and ball stir the picture, radii. */
const SEAL_REACH = 0.3;

/** Where the launcher's end shows, as far as it is in view. */
export function launcherRect([x, y]: ImagePoint, [ax, ay]: ImageVector, radius: Pixels): ImageRect {
  const corners = [SEAL_REACH, LAUNCHER_BEHIND].flatMap((behind) =>
    [-LAUNCHER_ASIDE, LAUNCHER_ASIDE].map(
      (aside): ImagePoint => [
        x - radius * (behind * ax + aside * ay),
        y - radius * (behind * ay - aside * ax),
      ],
    ),
  );
  const left = Math.min(...corners.map((c) => c[0]));
  const top = Math.min(...corners.map((c) => c[1]));
  return [
    left,
    top,
    Math.max(...corners.map((c) => c[0])) - left,
    Math.max(...corners.map((c) => c[1])) - top,
  ];
}

/** Root-mean-square shake from which a person should hear of it, px. */
const WORTH_A_WORD = 0.3;
/** Frames that show the launcher at rest, and that its place is averaged over. */
const REST_FRAMES = 8;
const AVERAGED = 3;
/** Movement that counts: in standard uncertainties and in px. */
const LAUNCHER_OVER_U = 5;
const LAUNCHER_LEAST = 0.3;

/** `lastFrame`: the last one before the ball leaves the muzzle; null: not known. */
export function shakeWarnings(shake: Shake, lastFrame: number | null): Warning[] {
  const warnings: Warning[] = [];
  const { report } = shake;
  if (report !== null && report.rms > WORTH_A_WORD) {
    const values = { rms: report.rms.toFixed(2), most: report.most.toFixed(1) };
    warnings.push({
      code: 'cameraShakes',
      values,
      message: `The picture shakes by ${values.rms} px (root mean square), up to ${values.most} px; centres are corrected for it, turning about the line of sight is not.`,
      remedy: 'Stand the camera apart from the launcher, on a heavier support.',
    });
  }
  const moved = lastFrame === null ? null : launcherMotion(shake, lastFrame);
  if (moved !== null) {
    warnings.push({
      code: 'launcherMoves',
      values: { most: moved.toFixed(2) },
      message: `Before the ball has left, the launcher's end moves by up to ${moved.toFixed(2)} px against the scene around it; the muzzle plane is taken to stand still.`,
      remedy: 'Clamp the launcher, or mark the muzzle where it stands as the ball leaves.',
    });
  }
  return warnings;
}

/** How far the launcher strays from where it stands at first, against the scene; null: not beyond its uncertainty. */
function launcherMotion({ places }: Shake, lastFrame: number): Pixels | null {
  const steps = places.slice(0, lastFrame + 1).flatMap((place) => {
    const [shift, launcher] = [place?.shift ?? null, place?.launcher ?? null];
    if (shift === null || launcher === null) return [];
    return {
      x: launcher.x - shift.x,
      y: launcher.y - shift.y,
      variance: (launcher.varX + launcher.varY + shift.varX + shift.varY) / 2,
    };
  });
  if (steps.length < REST_FRAMES + AVERAGED) return null;
  const meanOf = (part: typeof steps) => ({
    x: part.reduce((sum, { x }) => sum + x / part.length, 0),
    y: part.reduce((sum, { y }) => sum + y / part.length, 0),
    variance: part.reduce((sum, { variance }) => sum + variance / part.length ** 2, 0),
  });
  const rest = meanOf(steps.slice(0, REST_FRAMES));
  let most = 0;
  for (let i = REST_FRAMES; i + AVERAGED <= steps.length; i++) {
    const now = meanOf(steps.slice(i, i + AVERAGED));
    const distance = Math.hypot(now.x - rest.x, now.y - rest.y);
    const sure = LAUNCHER_OVER_U * Math.sqrt(now.variance + rest.variance);
    if (distance > Math.max(sure, LAUNCHER_LEAST)) most = Math.max(most, distance);
  }
  return most > 0 ? most : null;
}
