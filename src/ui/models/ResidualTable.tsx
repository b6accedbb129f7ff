import { MODEL_ORDER } from '../../app/modelComparison';
import { expanded } from '../../core/estimate';
import { formatNumber, formatQuantity, numberAt, percent } from '../../core/format';
import { useDesk } from '../desk';
import { Wide } from '../result/Wide';
import { MODEL_CARDS } from './words';

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
      <h3 id="residual-title">What residual air costs</h3>
      <Wide name="Exit speed and residual pressure">
        <table>
          <caption>
            Exit speed with other residual pressures, all else as stated (
            {percent(question.coverage)})
          </caption>
          <thead>
            <tr>
              <th scope="col" class="number">
                Of the air outside
              </th>
              <th scope="col" class="number">
                Residual pressure
              </th>
              {columns.map(({ name }) => (
                <th key={name} scope="col" class="number">
                  {MODEL_CARDS[name].title}
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
                    {formatNumber((100 * at) / outside, 1)} %
                  </th>
                  <td class="number">{numberAt(at / 100, 3)} hPa</td>
                  {columns.map(({ name, points }) => {
                    const point = points.find((one) => one.at === at);
                    return (
                      <td key={name} class="number">
                        {point === undefined
                          ? 'does not leave'
                          : formatQuantity(expanded(point.speed), 'speed', unit)}
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
