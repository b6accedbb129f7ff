import type { Stage } from '../stage';

/** Twice the frequency of the mains, Hz: a lamp's light follows the power, not the voltage. */
const LAMP_FREQUENCY = 100;

/** A mains-driven lamp beside a steady one; the clip is slow enough to see it. */
export function addFlicker(stage: Stage): void {
  const { random, width } = stage;
  stage.framesPerSecond = LAMP_FREQUENCY * random.between(6, 30);
  const depth = random.between(0.03, 0.15);
  const phase = random.between(0, 2 * Math.PI);
  const lean = random.between(-0.4, 0.4);
  const turn = (2 * Math.PI * LAMP_FREQUENCY) / stage.framesPerSecond;
  // The lamp stands nearer to one side, so that side flickers more.
  stage.gains.push(
    (frame, x) => 1 + depth * (1 + lean * (x / width - 0.5)) * Math.sin(turn * frame + phase),
  );
}

/** Hot, dead and blinking pixels, a third of them where the ball passes. */
export function addFaultyPixels(stage: Stage): void {
  const { random, width, height, radius, muzzle } = stage;
  const count = Math.floor(random.between(40, 160));
  const blink = stage.random;
  const pixels = Array.from({ length: count }, (_, i) => {
    const x = Math.floor(random.between(0, width));
    const low = Math.max(0, muzzle[1] - radius);
    const y = i % 3 === 0 ? random.between(low, low + 2 * radius) : random.between(0, height);
    return {
      p: Math.min(height - 1, Math.floor(y)) * width + x,
      fault: random.pick(['hot', 'dead', 'blinking', 'warm'] as const),
      value: Math.floor(random.between(180, 256)),
    };
  });
  stage.faults.push((grey) => {
    for (const { p, fault, value } of pixels) {
      if (fault === 'hot') grey[p] = value;
      else if (fault === 'dead') grey[p] = Math.floor(value / 20);
      else if (fault === 'warm') grey[p] = Math.min(255, (grey[p] as number) + value / 5);
      else if (blink.chance(0.4)) grey[p] = value;
    }
  });
}

/** H.264 by x264, or Motion-JPEG of low quality. */
export function addCompression(stage: Stage): void {
  const { random } = stage;
  stage.coding = random.chance(0.7)
    ? { codec: 'h264', crf: Math.round(random.between(23, 32)) }
    : { codec: 'mjpeg', quality: Math.round(random.between(8, 18)) };
}

/** The camera trembles by up to `shake` px: two oscillations each way and a jolt as the shot goes. */
export function addShake(stage: Stage): void {
  const { random, exitTime, shake } = stage;
  const way = () => {
    const slow = random.between(25, 60);
    const fast = random.between(6, 14);
    const phases = [random.between(0, 6.28), random.between(0, 6.28)] as const;
    const jolt = random.between(-0.4, 0.4);
    return (frame: number): number => {
      const since = frame - exitTime;
      const ring = since < 0 ? 0 : jolt * Math.exp(-since / 12) * Math.sin(since / 1.3);
      return (
        0.4 * Math.sin((2 * Math.PI * frame) / slow + phases[0]) +
        0.2 * Math.sin((2 * Math.PI * frame) / fast + phases[1]) +
        ring
      );
    };
  };
  const across = way();
  const down = way();
  stage.stray = (frame) => [shake * across(frame), shake * down(frame)];
}
