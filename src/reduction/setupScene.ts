import type { Outcome, ReasonValues } from '../core/reason';
import type { Pixels } from '../core/units';
import type { Shift } from '../image/registration';
import { type SceneFingerprint, sceneMove } from '../image/sceneFingerprint';
import type { Background } from '../image/types';
import type { Warning } from '../shot/result';

/** The still scene of a shot filmed before in the same setup. */
export interface SetupScene {
  readonly shotName: string;
  readonly fingerprint: SceneFingerprint;
}

/** How this film's scene stands to it. */
export interface SceneSince {
  readonly shotName: string;
  readonly move: Outcome<Shift>;
}

export const sceneSince = (
  background: Background,
  before: SetupScene | null | undefined,
): SceneSince | null =>
  before === null || before === undefined
    ? null
    : { shotName: before.shotName, move: sceneMove(background, before.fingerprint) };

/** A camera put back as it was may differ by this; marks are placed no better, px. */
const ALLOWED: Pixels = 0.5;
const OVER_U = 3;

/** Says where the camera has moved since the scale was set. */
export function setupWarnings(since: SceneSince | null): Warning[] {
  if (since === null) return [];
  const { shotName, move } = since;
  const moved = (message: string, values: ReasonValues): Warning[] => [
    {
      code: 'cameraMoved',
      message,
      values: { ...values, shot: shotName },
      remedy: 'Set scale and muzzle again on this film, or check that it belongs to this setup.',
    },
  ];
  if (!move.ok) {
    // A scene too plain to tell gives no reason to speak.
    return move.reason.code === 'sceneTooPlain'
      ? []
      : moved(
          `Camera or scene are not as in shot ${shotName} of the same setup. ${move.reason.message}`,
          { ...move.reason.values, form: 'other', because: move.reason.code },
        );
  }
  const { x, y, varX, varY } = move.value;
  const distance = Math.hypot(x, y);
  if (distance <= ALLOWED + OVER_U * Math.sqrt((varX + varY) / 2)) return [];
  const values = { distance: distance.toFixed(1), across: signed(x), down: signed(y) };
  return moved(
    `The still scene stands ${values.distance} px from where it stood in shot ${shotName} of the same setup (${values.across} across, ${values.down} down): the camera has moved.`,
    { ...values, form: 'moved' },
  );
}

const signed = (value: Pixels): string => `${value < 0 ? '−' : '+'}${Math.abs(value).toFixed(1)}`;
