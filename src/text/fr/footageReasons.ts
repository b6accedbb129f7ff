import type { Catalogue } from '../catalogue';

/** What footage cannot be read, or only with a proviso. */
export const footageReasons: Catalogue['reasons'] = {
  archiveTooLarge: {
    message:
      '« {name} » annonce {files} fichiers de {size} Gio une fois décompressés, plus que ce qui est décompressé ici.',
    remedy: 'Décompressez-le et ouvrez le dossier.',
  },
  badArchive: {
    message: '« {name} » ne peut pas être décompressé : {why}.',
    remedy: 'Compressez-le à nouveau sans mot de passe, ou décompressez-le et ouvrez le dossier.',
  },
  emptyArchive: {
    message: '« {name} » ne contient aucun enregistrement.',
    remedy: 'Choisissez une archive contenant les images d’une séquence ou un clip.',
  },
  nestedArchive: {
    message: '« {name} » contient une autre archive.',
    remedy: 'Décompressez-la une fois et ouvrez ce qu’elle contient.',
  },
  impossibleSize: {
    message: '« {name} » annonce des images de {width} x {height} pixels, ce qui ne se peut pas.',
    remedy:
      'Son en-tête est endommagé, ou c’est un autre type de fichier : copiez-le à nouveau depuis la caméra.',
  },
  rawMisfit: {
    message:
      '« {name} » ne contient pas d’images entières de {frame} pixels à {bits} bits : il reste {left} octets.',
    remedy:
      'Indiquez une autre taille, une autre profondeur, un autre en-tête ou un autre écart entre les images.',
  },
  rawBeyondBits: {
    message:
      'L’image {frame} de « {name} » contient la valeur de gris {value} ; les bits indiqués vont jusqu’à {white} au plus.',
    remedy:
      'Indiquez plus de bits, l’autre ordre des octets ou une autre taille d’en-tête ou d’écart.',
  },
  fieldsSeparated: {
    message:
      'Chaque image est une trame d’un film entrelacé : une ligne sur deux a été filmée, et seules celles-là déterminent le centre de la bille ; les autres sont complétées. Deux fois moins de lignes le déterminent moins bien, ce que dit son incertitude.',
    remedy:
      'Rien, si la cadence est indiquée en trames par seconde. Pour le prochain tir, faites prendre des images entières à la caméra.',
  },
  fieldsWoven: {
    message:
      'Le fichier se dit entrelacé et ses images restent entières : chacune montre deux instants.',
    remedy: 'Faites séparer les trames, sauf si la caméra a pris des images entières.',
  },
  imagesLoop: {
    message:
      '« {name} » est endommagé : après {count, plural, one {# image} other {# images}}, leur liste revient à une image précédente.',
    remedy: 'Copiez le fichier à nouveau, ou enregistrez les images une par une.',
  },
  tooManyImages: {
    message: '« {name} » énumère plus de {most} images.',
    remedy: 'Divisez-le, ou enregistrez le film en vidéo.',
  },
  tooManyParts: {
    message: '« {name} » est endommagé : il se compose de plus de {most} parties.',
    remedy: 'Copiez à nouveau le clip depuis la caméra.',
  },
  noFootage: {
    message: 'Aucun enregistrement n’est ouvert.',
    remedy: 'Ouvrez d’abord un clip.',
  },
  noFrames: {
    message: 'Aucune image n’est parvenue.',
    remedy: 'Choisissez un clip ou des photos contenant au moins une image.',
  },
  nothingChosen: {
    message: 'Aucun enregistrement n’y a été trouvé.',
    remedy: 'Choisissez un clip ou un dossier d’images.',
  },
};
