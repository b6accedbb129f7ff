import type { English, SameShape } from '../catalogue';

export const streak: SameShape<English['streak']> = {
  label: 'Image de défilement : image',
  now: 'image {frame} sur {count}',
  keys: 'Les flèches haut et bas parcourent les images, plus et moins étirent le temps, zéro montre toutes les images.',
  note: 'Une ligne par image ; le temps descend.',
  steepNote:
    'Une ligne par image ; le temps descend. Vol raide : son axe est en largeur, à sa propre échelle.',
  pointed: 'Image {frame}, {along} px le long de l’axe de vol',
  pointedTime: 'Image {frame}, {time}, {along} px le long de l’axe de vol',
  stretch: 'Étirer le temps',
  compress: 'Comprimer le temps',
  all: 'Toutes les images',
  slope: '{slope} px par image',
  slopeSpeed: '{slope} px par image, environ {speed}',
  lost: '{n, plural, one {# image perdue} other {# images perdues}}',
  muzzle: 'plan de bouche',
  frame: 'image {frame}',
  line: {
    from: 'Ligne oblique, extrémité antérieure',
    whole: 'Ligne oblique entière',
    to: 'Ligne oblique, extrémité postérieure',
    at: 'image {frame}, à {along} pixels le long de l’axe',
    atSlope: 'image {frame}, à {along} pixels le long de l’axe ; {slope}',
  },
};
