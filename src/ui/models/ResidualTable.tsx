import { MODEL_ORDER } from '../../app/modelComparison';
import { expanded } from '../../core/estimate';
import { showNumber, showNumberAt, showPercent, showQuantity } from '../../text/show';
import { t } from '../../text/text';
import { useDesk } from '../desk';
import { Wide } from '../result/Wide';
import { modelTitle } from './words';

/** What residual air costs, by the models that know of it. */
export function ResidualTable() {
  const desk = useDesk();
  const { models } = desk.session;
  const question = models.asked.value;
  const views = models.views.value;
  if (question === null) return null;
  const columns = MODEL_ORDER.flatMap((name) => {
    const points = views[name].outlook?.residuals ?? null;
    return points === null ? [] : [{ name, points }];
  });
  const pressures = [...new Set(columns.flatMap(({ points }) => points.map(({ at }) => at)))];
  if (pressures.length === 0) return null;
  const unit = desk.preferences.speedUnit.value;
  const outside = question.launcher.air.pressure;
  return (
    <section class="stack" aria-labelledby="residual-title">
      <h3 id="residual-title">{t('models.residual.title')}</h3>
      <Wide name={t('models.residual.name')}>
        <table>
          <caption>
            {t('models.residual.caption', { coverage: showPercent(question.coverage) })}
          </caption>
          <thead>
            <tr>
              <th scope="col" class="number">
                {t('models.residual.share')}
              </th>
              <th scope="col" class="number">
                {t('models.residual.pressure')}
              </th>
              {columns.map(({ name }) => (
                <th key={name} scope="col" class="number">
                  {modelTitle(name)}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {pressures
              .sort((a, b) => a - b)
              .map((at) => (
                <tr key={at}>
                  <th scope="row" class="number">
                    {showNumber((100 * at) / outside, 1)} %
                  </th>
                  <td class="number">
                    {t('models.residual.pressureIs', { number: showNumberAt(at / 100, 3) })}
                  </td>
                  {columns.map(({ name, points }) => {
                    const point = points.find((one) => one.at === at);
                    return (
                      <td key={name} class="number">
                        {point === undefined
                          ? t('models.residual.doesNotLeave')
                          : showQuantity(expanded(point.speed), 'speed', unit)}
                      </td>
                    );
                  })}
                </tr>
              ))}
          </tbody>
        </table>
      </Wide>
    </section>
  );
}
