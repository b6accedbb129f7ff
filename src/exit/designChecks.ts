import { chiSquareQuantile, normalQuantile } from '../core/statistics';
import { changeWithout, leverage, scoreTest } from '../fit/influence';
import { SIGNIFICANCE } from '../fit/residualChecks';
import type { FitCheck } from '../shot/result';
import type { Choice } from './choice';
import type { Flight } from './flight';
import { V0 } from './motion';

/** Above this leverage a point decides alone: 95 % of its error and more stay unseen. */
const ALONE = 0.95;
/** With fewer points than this a bend along the frame cannot be told from noise. */
const FEWEST_FOR_TREND = 6;

/**
 * The point with the greatest say in the fit, and what the speed would be without it. Fails where the speed then moves
 * by more than chance would have it in one fit of a hundred, or where nothing checks that point at all.
 */
export function leverageCheck({ points }: Flight, { best }: Choice, velocity: number): FitCheck {
  const { design, white } = best.fit;
  const says = points.map((_, i) => leverage(design, i));
  const at = says.indexOf(Math.max(...says));
  const { frame } = points[at] as (typeof points)[number];
  const say = says[at] as number;
  const code = 'leverage';
  if (say > ALONE) {
    return {
      code,
      passed: false,
      message: `Frame ${frame} alone decides a part of the fit (leverage ${say.toFixed(2)}): no other frame would show an error of its centre.`,
      remedy: 'Film at a higher rate, so that more frames stand where this one does.',
      values: { form: 'alone', frame, say: say.toFixed(2), speed: '' },
    };
  }
  const { change, u } = changeWithout(design, at, white[at] as number, V0);
  const passed = Math.abs(change) <= normalQuantile(1 - SIGNIFICANCE / 2) * u;
  const speed = `${(velocity + change).toPrecision(5)} m/s`;
  const values = { frame, say: say.toFixed(2), speed };
  const without = `Without frame ${frame}, which has the greatest say in the fit (leverage ${say.toFixed(2)}), the speed would be about ${speed}`;
  return passed
    ? { code, passed, message: `${without}.`, remedy: null, values: { ...values, form: 'within' } }
    : {
        code,
        passed,
        message: `${without}: farther off than its centre's uncertainty explains.`,
        remedy: `Look at the centre of frame ${frame}, and reject it if its outline is disturbed.`,
        values: { ...values, form: 'beyond' },
      };
}

/** Whether the residuals bend along the frame beyond what the fitted model follows: a test of terms in s^2 and s^3. */
export function trendCheck({ points, sigma }: Flight, { best, sigmaScale }: Choice): FitCheck {
  const code = 'trendAlongFrame';
  const passes = (message: string, form: string): FitCheck => ({
    ...{ code, passed: true, message, remedy: null },
    values: { form },
  });
  const tooFew = passes('Too few frames to check for a trend along the frame.', 'tooFew');
  if (points.length < FEWEST_FOR_TREND) return tooFew;
  const places = points.map(({ along }) => along);
  const [low, high] = [Math.min(...places), Math.max(...places)];
  const terms = [2, 3].map((power) =>
    Float64Array.from(
      places,
      (place, i) =>
        ((2 * place - low - high) / (high - low)) ** power / ((sigma[i] as number) * sigmaScale),
    ),
  );
  const { chiSquare, dof } = scoreTest(best.fit.design, best.fit.white, terms);
  if (dof === 0) return tooFew;
  return chiSquare <= chiSquareQuantile(1 - SIGNIFICANCE, dof)
    ? passes('The residuals show no trend along the frame.', 'none')
    : {
        code,
        passed: false,
        message:
          'The residuals bend along the frame: the scale is not the same everywhere in the picture, or the path bends.',
        remedy:
          'Calibrate the lens, mark the plane of the flight, or leave frames near the edge of the picture out.',
        values: { form: 'bends' },
      };
}
