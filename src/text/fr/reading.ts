import type { English, SameShape } from '../catalogue';

/** How footage is read: fields of interlaced film, pixels without a header. */
export const reading: SameShape<English['reading']> = {
  scan: {
    name: 'Balayage',
    whole: 'images entières',
    interlaced: 'entrelacé, {order}',
    separated: '{scan} ; chaque trame est ici une image',
  },
  levels: {
    name: 'Noir et blanc',
    full: '{black} et {white}',
    limited: '{black} et {white} (plage limitée)',
  },
  fields: {
    title: 'Film entrelacé',
    what: 'Un film entrelacé montre deux instants dans chaque image, chacun une ligne sur deux. Séparées, chaque trame est une image : indiquez la cadence en trames par seconde.',
    label: 'Les images sont lues',
    hint: 'Un changement recompte les images : les images écartées, les centres posés à la main et les images perdues sont oubliés.',
    order: { topFirst: 'lignes 0, 2, 4 … d’abord', bottomFirst: 'lignes 1, 3, 5 … d’abord' },
    auto: 'comme le dit le fichier',
    whole: 'entières, quoi que dise le fichier',
    separated: 'séparées, {order}',
  },
  raw: {
    title: 'Pixels sans en-tête',
    what: 'Rien dans <strong>{name}</strong> ({bytes} octets) ne dit comment ses pixels sont rangés. Indiquez-le comme le font les réglages de la caméra ou son logiciel : valeurs de gris, ligne par ligne, une image après l’autre.',
    width: 'Largeur, pixels',
    height: 'Hauteur, pixels',
    grey: 'Valeurs de gris',
    bits: {
      '8': '8 bits, 1 octet',
      '10': '10 bits, 2 octets',
      '12': '12 bits, 2 octets',
      '16': '16 bits, 2 octets',
    },
    byteOrder: 'Ordre des octets',
    order: { little: 'faible d’abord', big: 'fort d’abord' },
    skip: 'Octets avant la première image',
    gap: 'Octets entre les images',
    open: 'L’ouvrir ainsi',
    leave: 'Ne pas l’ouvrir',
    fits: 'Cela convient : {count} images de {frame} octets remplissent le fichier.',
    tooLarge:
      'Cela ne convient pas encore : une image aurait {frame} octets, plus que le fichier n’en contient.',
    over: 'Cela ne convient pas encore : {n, plural, one {{count} image de {frame} octets laisse} other {{count} images de {frame} octets laissent}} {left} octets de trop.',
    single:
      'Cela ne convient pas encore : une seule image remplit le fichier ; un film en a au moins deux.',
    shownHere: 'Une image s’affiche ici dès que des images entières remplissent le fichier.',
    frameOf: 'Image {index} sur {last}',
    frameIs: 'Image {index} telle qu’indiquée',
  },
};
