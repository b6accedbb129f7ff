import type { Estimate } from '../core/estimate';
import type { Reason } from '../core/reason';

export const MISTAKES = [
  'wrongRate',
  'lostFrames',
  'wrongPlane',
  'parallax',
  'rollingShutter',
  'blur',
] as const;
export type MistakeName = (typeof MISTAKES)[number];

/** What was found of a rendered shot, one way or the other. SI units. */
interface Found {
  readonly speed: Estimate;
  readonly exitTime: Estimate;
  /** Standard uncertainty of a centre along the flight, m: the middle one. */
  readonly centreU: number;
  /** Frames used. */
  readonly frames: number;
  /** What this tool warned of. */
  readonly warnings: readonly Reason[];
}

/** A usual mistake, its size measured on rendered film by the core itself; `npm run mistakes` writes it. */
export interface Mistake {
  readonly name: MistakeName;
  /** What it makes wrong: the speed by a share, the exit time by so many seconds, a centre's u by a factor. */
  readonly of: 'speed' | 'exitTime' | 'centreU';
  readonly truth: { readonly speed: number; readonly exitTime: number };
  readonly right: Found;
  readonly wrong: Found;
  /** The same by its closed form. */
  readonly expected: number;
  /** What was done wrong, in numbers. */
  readonly inputs: Readonly<Record<string, number>>;
  readonly pictures: readonly MistakePicture[];
}

export interface MistakePicture {
  readonly file: string;
  readonly shows: 'right' | 'wrong' | 'both';
  readonly width: number;
  readonly height: number;
  /** Upright lines to be drawn, at their x in pixels. */
  readonly lines: readonly { readonly x: number; readonly is: 'muzzle' | 'mark' }[];
}

const files = import.meta.glob<{ readonly mistakes: readonly Mistake[] }>(
  '../../sample-clips/mistakes/mistakes.json',
  { eager: true, import: 'default' },
);

export const mistakes: readonly Mistake[] = Object.values(files).flatMap((file) => file.mistakes);

/** How large it was found to be: in the terms of `expected`. */
export function foundSize({ of, right, wrong }: Pick<Mistake, 'of' | 'right' | 'wrong'>): number {
  switch (of) {
    case 'speed':
      return wrong.speed.value / right.speed.value - 1;
    case 'exitTime':
      return wrong.exitTime.value - right.exitTime.value;
    case 'centreU':
      return wrong.centreU / right.centreU;
  }
}

const urls = import.meta.glob<string>('../../sample-clips/mistakes/*.png', {
  eager: true,
  query: '?url',
  import: 'default',
});

export const pictureUrl = ({ file }: MistakePicture): string =>
  urls[`../../sample-clips/mistakes/${file}`] ?? '';
