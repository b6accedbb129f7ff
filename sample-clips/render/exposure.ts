import { ballShade, sphereOutline } from './ball';
import { Canvas, type Clip } from './canvas';
import { Optics } from './optics';
import { light } from './scene';
import { strips } from './shutter';
import { ballAt, ballInImage, type Stage } from './stage';

/** Brightness of the ball facing the light, as a share of full scale. */
const BALL_BRIGHTNESS = 0.76;
/** Instants an exposure is made of: at least this many, and no thing moves farther than `LONGEST_STEP` px between two. */
const LEAST_INSTANTS = 16;
const LONGEST_STEP = 0.5;
/** A ball this far behind the muzzle plane of an opaque launcher cannot be seen. */
const HIDDEN = -0.03;

/** Films a stage: the light each pixel gathers over each frame's exposure. */
export class Film {
  private readonly canvas: Canvas;
  private readonly optics: Optics;
  private readonly quiet: Float32Array;
  private readonly out: Float32Array;
  private readonly strips;

  constructor(private readonly stage: Stage) {
    const { width, height } = stage.spec.image;
    this.canvas = new Canvas(stage.still);
    this.optics = new Optics(width, height, stage.spec.camera.blur);
    this.strips = strips(stage.spec, stage.truth);
    this.out = new Float32Array(width * height);
    this.quiet = new Float32Array(width * height);
    const { rows, columns } = this.canvas;
    const all = new Int32Array(rows).fill(columns);
    this.optics.image(stage.still.radiance, new Int32Array(rows), all, this.quiet);
  }

  /** Mean radiance of every pixel over the exposure of frame i, share of full scale. Reused. */
  frame(i: number): Float32Array {
    const { stage, canvas, out, quiet } = this;
    canvas.clear();
    for (const { clip, line } of this.strips) {
      const middle = (stage.times[i] as number) + line * stage.truth.lineTime;
      this.expose(middle, clip);
    }
    this.optics.image(canvas.change, canvas.first, canvas.last, out);
    for (let k = 0; k < out.length; k++) out[k] = (out[k] as number) + (quiet[k] as number);
    return out;
  }

  private expose(middle: number, clip: Clip): void {
    const { stage, canvas } = this;
    const { exposure, metresPerPixel } = stage.truth;
    const speed = Math.max(
      stage.seal.fastest(middle + exposure / 2),
      stage.seal.fastest(middle),
      stage.flight ? Math.hypot(...stage.flight.velocity(middle)) : 0,
    );
    // Things nearer than the flight plane move a little faster across the image.
    const travel = (1.1 * speed * exposure) / metresPerPixel;
    const count = Math.max(LEAST_INSTANTS, Math.ceil(travel / LONGEST_STEP));
    for (let j = 0; j < count; j++) {
      this.paint(middle + ((j + 0.5) / count - 0.5) * exposure, clip);
      canvas.endInstant(1 / count);
    }
  }

  private paint(t: number, clip: Clip): void {
    const { stage, canvas } = this;
    const { width, height } = stage.spec.image;
    const { behind, before } = stage.seal.sheets(t);
    for (const sheet of behind) {
      canvas.polygon(sheet.points, sheet.radiance, sheet.opacity, true, clip);
    }
    const s = stage.flight?.position(t)[0] ?? Number.NEGATIVE_INFINITY;
    if (s > HIDDEN || (stage.flight && stage.setting.clearTube)) {
      const outline = sphereOutline(stage.projection, ballAt(stage, t), stage.truth.ballRadius);
      const [x, y] = ballInImage(stage, t);
      const brightness = BALL_BRIGHTNESS * light(width, height, x, y);
      canvas.disc(outline, ballShade(brightness), clip);
    }
    for (const sheet of before) {
      canvas.polygon(sheet.points, sheet.radiance, sheet.opacity, false, clip);
    }
  }
}
