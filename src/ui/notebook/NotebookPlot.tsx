import { NOTEBOOK_COVERAGE } from '../../app/notebook';
import type { ModelCurve, PlotAxis } from '../../app/notebookCurve';
import { openNotebookShot } from '../../app/notebookShots';
import type { NotebookEntry } from '../../app/resultTypes';
import { intervalFactor, isAvailable } from '../../core/estimate';
import { SpeedPlot } from '../../plots/SpeedPlot';
import type { ShownUnit } from '../../plots/units';
import { t } from '../../text/text';
import { useDesk } from '../desk';
import { ChoiceField } from '../fields/ChoiceField';
import { MODEL_LOOKS, modelTitle } from '../models/words';
import { WorkState } from '../panels/WorkState';
import { speedShown } from '../result/words';
import { ModelChoice, model } from './ModelChoice';

const UNITS: Readonly<Record<PlotAxis, ShownUnit>> = {
  barrelLength: { symbol: 'm', perSi: 1 },
  residualPressure: { symbol: 'hPa', perSi: 0.01 },
};

/** The speeds of the shots counted against a number of the launcher, with a model's curve where one is asked for. */
export function NotebookPlot() {
  const desk = useDesk();
  const { notebook } = desk.session;
  const what = notebook.axis.value;
  const placed = notebook.counted.value.filter(
    ({ conditions, exitVelocity }) => conditions[what] !== null && isAvailable(exitVelocity),
  );
  const work = notebook.curve.value;
  const curve = work.kind === 'done' && work.found.what === what ? work.found : null;
  return (
    <section class="stack" aria-labelledby="notebook-plot">
      <h3 id="notebook-plot">{t('notebook.plot.title')}</h3>
      <div class="notebook-choice">
        <ChoiceField
          label={t('notebook.plot.against')}
          value={what}
          choices={(Object.keys(UNITS) as PlotAxis[]).map((value) => ({
            value,
            label: t(`notebook.plot.${value}.name`),
          }))}
          onChange={(next) => {
            notebook.axis.value = next;
          }}
        />
        <ModelChoice />
        <button
          type="button"
          disabled={work.kind === 'running' || placed.length === 0}
          onClick={() => void notebook.drawCurve(model.value)}
        >
          {t('notebook.plot.draw')}
        </button>
      </div>
      <WorkState work={work} doing={t('notebook.plot.running')} onCancel={notebook.cancelCurve}>
        {() => null}
      </WorkState>
      {placed.length === 0 ? (
        <p class="muted">{t(`notebook.plot.${what}.none`)}</p>
      ) : (
        <SpeedPlot
          title={t(`notebook.plot.${what}.title`)}
          axis={{ name: t(`notebook.plot.${what}.name`), unit: UNITS[what] }}
          unit={speedShown(desk.preferences.speedUnit.value)}
          curves={curve === null ? [] : [lineOf(curve)]}
          measured={placed.flatMap((entry) => pointOf(entry, what))}
          coverage={NOTEBOOK_COVERAGE}
          onPick={(index) => {
            const entry = placed[index];
            if (entry === undefined || entry.shot === null) return;
            desk.place.value = 'shot';
            desk.step.value = 'footage';
            void openNotebookShot(desk.session, entry);
          }}
        />
      )}
      {curve !== null && (
        <p class="muted">
          {t(`notebook.plot.${what}.only`, { shot: curve.shot })} {t('models.caution')}
        </p>
      )}
    </section>
  );
}

const lineOf = ({ model: name, points, shot }: ModelCurve) => ({
  name: t('notebook.plot.curve', { model: modelTitle(name), shot }),
  look: MODEL_LOOKS[name],
  points: points.map(({ at, speed: { value, interval } }) => ({
    ...{ x: at, speed: value },
    ...{ low: interval[0], high: interval[1] },
  })),
});

function pointOf({ name, conditions, exitVelocity }: NotebookEntry, what: PlotAxis) {
  const place = conditions[what];
  if (place === null || !isAvailable(exitVelocity)) return [];
  const half = intervalFactor(exitVelocity) * place.u;
  const [low, high] = exitVelocity.interval;
  return [
    {
      ...{ name, low, high, x: place.value, speed: exitVelocity.value },
      ...{ xLow: place.value - half, xHigh: place.value + half },
    },
  ];
}
