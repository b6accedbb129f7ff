import type { English, SameShape } from '../catalogue';

export const seal: SameShape<English['panels']['seal']> = {
  title: 'Membrane',
  inView: 'La membrane de bouche est en vue',
  notInView: 'Aucune membrane en vue : ni l’instant de rupture ni l’avance ne sont indiqués.',
  foundWhen: 'La rupture est cherchée lors de la mesure du film, à l’étape Bille.',
  burst: 'Rupture',
  instant: '{time} ({coverage})',
  burstIs: '{time} ({coverage}) après l’image 0',
  bulge: 'Début du bombement',
  lastWholeIs: 'Dernière entière : image {frame}',
  firstOpenIs: 'Première ouverte : image {frame}',
  where: 'Où elle est observée',
  regionFound: 'La zone est déduite du plan de bouche.',
  region: '{width} × {height} px à partir de x {x}, y {y}.',
  find: 'La déduire du plan de bouche',
  off: 'La membrane n’est pas dans le plan de bouche',
  planeX: 'x du plan de la membrane',
  planeY: 'y',
  planeU: '± u le long du vol',
  byHand: 'Rupture fixée à la main',
  hereAndNext: 'Entière dans cette image, ouverte dans la suivante',
  replaces: 'Remplace ce qui a été trouvé.',
  lastWhole: 'Dernière entière : image',
  firstOpen: 'Première ouverte : image',
  useFound: 'Utiliser la rupture trouvée',
};

export const sound: SameShape<English['panels']['sound']> = {
  title: 'Son',
  times: 'La piste sonore date la rupture et l’impact',
  none: 'Ce film n’a pas de piste sonore.',
  offset: 'Décalage du son',
  offsetHint:
    'Ajouté à un instant de la piste, il donne l’instant sur le film. Un claquement de mains filmé le révèle.',
  microphone: 'Du microphone à la bouche',
  backstop: 'De la butée à la bouche',
  noBackstop: 'pas de butée',
  backstopHint: 'Le long du vol. Avec elle, l’impact donne une vitesse moyenne.',
  toBackstop: 'Du microphone à la butée',
  notMeasured: 'non mesuré',
  toBackstopHint:
    'Non mesurée, cette distance peut prendre toute valeur permise par les deux autres ; la vitesse moyenne est alors bien moins connue.',
};
