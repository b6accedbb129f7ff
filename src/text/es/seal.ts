import type { English, SameShape } from '../catalogue';

export const seal: SameShape<English['panels']['seal']> = {
  title: 'Membrana',
  inView: 'La membrana de la boca está a la vista',
  notInView: 'Sin membrana a la vista: no se indican ni el instante de rotura ni el adelanto.',
  foundWhen: 'La rotura se busca al medir la película, en el paso Bola.',
  burst: 'Rotura',
  instant: '{time} ({coverage})',
  burstIs: '{time} ({coverage}) después del fotograma 0',
  bulge: 'Comienzo del abombamiento',
  lastWholeIs: 'Última entera: fotograma {frame}',
  firstOpenIs: 'Primera abierta: fotograma {frame}',
  where: 'Dónde se observa',
  regionFound: 'La zona se deduce del plano de la boca.',
  region: '{width} × {height} px desde x {x}, y {y}.',
  find: 'Deducirla del plano de la boca',
  off: 'La membrana no está en el plano de la boca',
  planeX: 'x del plano de la membrana',
  planeY: 'y',
  planeU: '± u a lo largo del vuelo',
  byHand: 'Rotura fijada a mano',
  hereAndNext: 'Entera en este fotograma, abierta en el siguiente',
  replaces: 'Sustituye a lo encontrado.',
  lastWhole: 'Última entera: fotograma',
  firstOpen: 'Primera abierta: fotograma',
  useFound: 'Usar la rotura encontrada',
};

export const sound: SameShape<English['panels']['sound']> = {
  title: 'Sonido',
  times: 'La pista de sonido da los instantes de rotura e impacto',
  none: 'Esta grabación no tiene pista de sonido.',
  offset: 'Desfase del sonido',
  offsetHint:
    'Sumado a un instante de la pista da el instante en la película. Una palmada filmada lo revela.',
  microphone: 'Del micrófono a la boca',
  backstop: 'Del tope a la boca',
  noBackstop: 'sin tope',
  backstopHint: 'A lo largo del vuelo. Con ella el impacto da una velocidad media.',
  toBackstop: 'Del micrófono al tope',
  notMeasured: 'sin medir',
  toBackstopHint:
    'Sin medir, puede ser cualquiera que permitan las otras dos, y la velocidad media se conoce mucho peor.',
};
