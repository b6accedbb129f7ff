import { MODEL_ORDER, type ModelView } from '../../app/modelComparison';
import type { ModelName } from '../../app/resultTypes';
import { type Estimate, intervalFactor, type Quantity } from '../../core/estimate';
import { GasDiagram } from '../../plots/GasDiagram';
import { SealPressurePlot } from '../../plots/SealPressurePlot';
import { SpeedPlot } from '../../plots/SpeedPlot';
import { t } from '../../text/text';
import { useDesk } from '../desk';
import { speedShown } from '../result/words';
import { MODEL_LOOKS, modelTitle } from './words';

/** What is drawn of a model that knows of air ahead of the ball. */
const WITH_AIR_AHEAD: readonly ModelName[] = ['momentum', 'gasDynamics', 'expansion'];
const METRES = { symbol: 'm', perSi: 1 };

/** Speed against length, pressure on the seal, and the gas in the barrel. */
export function ModelPlots() {
  const desk = useDesk();
  const { models, shots } = desk.session;
  const question = models.asked.value;
  const views = models.views.value;
  if (question === null) return null;
  const { launcher, uncertainty, coverage, measured } = question;
  const gas = predictionOf(views.gasDynamics);
  const length = { value: launcher.barrelLength, u: uncertainty.barrelLength ?? 0 };
  const curves = MODEL_ORDER.flatMap((name) => {
    const points = views[name].outlook?.lengths ?? [];
    if (points.length === 0) return [];
    return [
      {
        ...{ name: modelTitle(name), look: MODEL_LOOKS[name] },
        points: points.map(({ at, speed }) => speedAt(at, speed)),
      },
    ];
  });
  const seals = WITH_AIR_AHEAD.flatMap((name) => {
    const prediction = predictionOf(views[name]);
    if (prediction === null) return [];
    const { curve, exit, lead } = prediction;
    return [
      {
        name: modelTitle(name),
        look: MODEL_LOOKS[name],
        times: curve.time.map((t) => t - exit.time),
        pressures: curve.sealPressure,
        lead: lead.quantity.value,
        leadInterval: lead.quantity.interval,
      },
    ];
  });
  const { speed, lead } = measured;
  return (
    <div class="plots">
      {curves.length > 0 && (
        <SpeedPlot
          title={t('models.plots.title')}
          axis={{ name: t('models.plots.axis'), unit: METRES }}
          unit={speedShown(desk.preferences.speedUnit.value)}
          curves={curves}
          measured={
            speed === null
              ? []
              : [
                  {
                    name: shots.draft.value?.name || t('models.plots.thisShot'),
                    ...speedAt(length.value, speed),
                    ...ends(length, intervalFactor(speed)),
                  },
                ]
          }
          coverage={coverage}
        />
      )}
      {seals.length > 0 && (
        <SealPressurePlot
          curves={seals}
          opensAt={launcher.outsidePressure + launcher.sealBurstPressure}
          film={lead === null ? null : { lead: lead.value, interval: lead.interval }}
        />
      )}
      {gas !== null && gas.profiles !== null && (
        <div class="plots-wide">
          <GasDiagram
            rows={gas.profiles}
            barrelLength={launcher.barrelLength}
            opening={gas.exit.seal.time}
            exit={gas.exit.time}
          />
        </div>
      )}
    </div>
  );
}

const predictionOf = ({ prediction }: ModelView) => (prediction?.ok ? prediction.value : null);

const speedAt = (x: number, { value, interval: [low, high] }: Quantity) => ({
  ...{ x, low, high },
  speed: value,
});

const ends = ({ value, u }: Estimate, factor: number) => ({
  xLow: value - factor * u,
  xHigh: value + factor * u,
});
