import type { English, SameShape } from '../catalogue';

export const film: SameShape<English['film']> = {
  label: 'Film',
  keys: 'Plus et moins agrandissent et réduisent, zéro montre l’image entière, point ses pixels avec leurs gris, Maj avec les flèches la déplace, les flèches gauche et droite parcourent les images.',
  place: 'x {x}, y {y} pixels',
  zoomIn: 'Agrandir',
  zoomOut: 'Réduire',
  pixels: 'Pixels',
  pixelsTitle: 'Agrandit les pixels jusqu’à ce que leurs niveaux de gris soient lisibles.',
  whole: 'Image entière',
  key: {
    used: 'utilisé',
    byHand: 'placé à la main',
    notUsed: 'non utilisé',
    seed: 'désigné comme la bille',
    u: 'incertitude u, agrandie {factor} fois',
  },
  held: {
    label: 'Image {frame}, gardée à côté du film',
    name: 'image {frame}, gardée',
    swap: 'Permuter',
  },
  magnifier: {
    label: 'Loupe',
    told: 'x {x}, y {y} : gris {grey}',
    noGrey: 'aucun',
    grey: 'gris {grey}',
  },
  mark: {
    edge: 'bord {number}',
    flight: 'vol',
    seal: 'membrane',
  },
  corner: {
    topLeft: 'en haut à gauche',
    topRight: 'en haut à droite',
    bottomRight: 'en bas à droite',
    bottomLeft: 'en bas à gauche',
  },
  handle: {
    lengthFrom: 'Longueur connue {number}, première extrémité',
    lengthTo: 'Longueur connue {number}, seconde extrémité',
    edgeFrom: 'Bord droit {number}, première extrémité',
    edgeTo: 'Bord droit {number}, seconde extrémité',
    plane: 'Coin {number} du plan, {corner}',
    muzzlePoint: 'Point du plan de bouche',
    muzzleAxis: 'Direction du vol',
    point: 'Centre de la bille dans l’image {frame}',
    seed: 'Emplacement de la bille dans l’image {frame}',
    flightCorner: 'Zone de vol, coin {corner}',
    sealCorner: 'Zone de la membrane, coin {corner}',
  },
};
