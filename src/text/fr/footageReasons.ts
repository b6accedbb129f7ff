import type { Catalogue } from '../catalogue';

/** What footage cannot be read, or only with a proviso. */
export const footageReasons: Catalogue['reasons'] = {
  archiveTooLarge: {
    message:
      '« {name} » annonce {files} fichiers de {size} Gio une fois décompressés, plus que ce qui est décompressé ici.',
    remedy: 'Décompressez-le et ouvrez le dossier.',
  },
  badArchive: {
    message: '« {name} » ne peut pas être décompressé : {why}.',
    remedy: 'Compressez-le à nouveau sans mot de passe, ou décompressez-le et ouvrez le dossier.',
  },
  emptyArchive: {
    message: '« {name} » ne contient aucun enregistrement.',
    remedy: 'Choisissez une archive contenant les images d’une séquence ou un clip.',
  },
  nestedArchive: {
    message: '« {name} » contient une autre archive.',
    remedy: 'Décompressez-la une fois et ouvrez ce qu’elle contient.',
  },
  impossibleSize: {
    message: '« {name} » annonce des images de {width} x {height} pixels, ce qui ne se peut pas.',
    remedy:
      'Son en-tête est endommagé, ou c’est un autre type de fichier : copiez-le à nouveau depuis la caméra.',
  },
  rawMisfit: {
    message:
      '« {name} » ne contient pas d’images entières de {frame} pixels à {bits} bits : il reste {left} octets.',
    remedy:
      'Indiquez une autre taille, une autre profondeur, un autre en-tête ou un autre écart entre les images.',
  },
  rawBeyondBits: {
    message:
      'L’image {frame} de « {name} » contient la valeur de gris {value} ; les bits indiqués vont jusqu’à {white} au plus.',
    remedy:
      'Indiquez plus de bits, l’autre ordre des octets ou une autre taille d’en-tête ou d’écart.',
  },
  fieldsSeparated: {
    message:
      'Chaque image est une trame d’un film entrelacé : une ligne sur deux a été filmée, et seules celles-là déterminent le centre de la bille ; les autres sont complétées. Deux fois moins de lignes le déterminent moins bien, ce que dit son incertitude.',
    remedy:
      'Rien, si la cadence est indiquée en trames par seconde. Pour le prochain tir, faites prendre des images entières à la caméra.',
  },
  fieldsWoven: {
    message:
      'Le fichier se dit entrelacé et ses images restent entières : chacune montre deux instants.',
    remedy: 'Faites séparer les trames, sauf si la caméra a pris des images entières.',
  },
  imagesLoop: {
    message:
      '« {name} » est endommagé : après {count, plural, one {# image} other {# images}}, leur liste revient à une image précédente.',
    remedy: 'Copiez le fichier à nouveau, ou enregistrez les images une par une.',
  },
  tooManyImages: {
    message: '« {name} » énumère plus de {most} images.',
    remedy: 'Divisez-le, ou enregistrez le film en vidéo.',
  },
  brokenParts: {
    message:
      '« {name} » est endommagé : ce qui se trouve à l’octet {at} ne fait partie d’aucun film de ce type.',
    remedy: 'Copiez à nouveau le clip depuis la caméra.',
  },
  brokenIndex: {
    message:
      '« {name} » est endommagé : son index a des temps pour {timed} images et des places pour {sized}.',
    remedy: 'Copiez à nouveau le clip depuis la caméra.',
  },
  tooManyParts: {
    message: '« {name} » est endommagé : il se compose de plus de {most} parties.',
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
  undecodable: {
    message:
      '{form, select, clip {Aucun décodeur ici ne lit ce clip : {why}.} coded {« {name} » est codé en {codec} (format de pixel {format}), qu’aucun décodeur ici ne lit.} picture {Aucun décodeur ici ne lit « {name} » ({format}, {pixels}).} noStart {Le film n’a aucune image où un décodeur puisse commencer.} other {Le décodeur du navigateur donne des images sans plan de luma ({format}).}}',
    remedy:
      '{form, select, clip {Convertissez le clip en FFV1, ProRes ou H.264 et ouvrez le résultat.} coded {Ouvrez-le dans un autre navigateur, ou convertissez-le en H.264, ProRes ou FFV1.} picture {Enregistrez les images en PNG, 8 ou 16 bits.} noStart {Copiez à nouveau le clip depuis la caméra.} other {Utilisez un autre navigateur.}}',
  },
  truncated: {
    message:
      '{form, select, endsEarly {Le film finit trop tôt : il annonce {at, select, frame {l’image {frame} sur {frames}} other {« {name} »}}, mais rien n’en sort.} frames {« {name} » est tronqué : {there} images sur {stated} sont là.} midFrame {« {name} » est tronqué au milieu d’une image.} list {« {name} » est tronqué : la liste de ses images dépasse sa fin.} noFrame {Le film annonce l’image {frame}, mais le décodeur n’en donne pas.} bytes {« {name} » est tronqué : il devrait avoir {stated} octets et en a {there}.} other {« {name} » est tronqué : son index (moov), que les caméras écrivent en dernier, manque.}}',
    remedy:
      '{form, select, endsEarly {Copiez à nouveau le clip depuis la caméra, ou écartez sa fin.} list {Copiez à nouveau le fichier.} noFrame {Copiez à nouveau le clip depuis la caméra, ou écartez cette partie.} index {Copiez à nouveau le clip depuis la caméra ; un enregistrement interrompu demande la réparation propre à la caméra.} other {Copiez à nouveau le clip depuis la caméra.}}',
  },
  decoderFailed: {
    message:
      '{form, select, stalled {Le décodeur ffmpeg n’a rien lu ni rien donné depuis {seconds} s.} brokeDown {Le décodeur ffmpeg est tombé en panne : {why}.} damaged {Le film n’a pas pu être décodé à {at, select, frame {l’image {frame} sur {frames}} other {« {name} »}} : {why}.} differs {L’image {frame} est une autre image pour un second décodeur : le film est endommagé là ou avant.} counts {Le navigateur trouve {frames} images dans le film et ffmpeg {others} : sa liste d’images est endommagée, ou n’est pas une liste que les deux comprennent.} browser {Le décodeur du navigateur a abandonné : {why}.} browserStalled {Le décodeur du navigateur n’a donné aucune image depuis {seconds} s.} other {L’image {frame} a une autre taille que la première ({width} x {height}).}}',
    remedy:
      '{form, select, stalled {Essayez le clip dans un autre format, ou une partie plus courte.} brokeDown {Essayez le clip dans un autre format, ou une partie plus courte.} damaged {Le clip est endommagé à cet endroit : copiez-le à nouveau depuis la caméra, ou écartez cette partie.} differs {Copiez à nouveau le clip depuis la caméra, ou écartez cette partie.} counts {Copiez à nouveau le clip depuis la caméra ; si cela n’aide pas, convertissez-le.} browser {Le clip y est peut-être endommagé : copiez-le à nouveau depuis la caméra, ou écartez cette partie.} browserStalled {Rechargez la page ; si cela se répète, convertissez le clip.} other {Coupez le clip là où sa taille change.}}',
  },
  decoderMissing: {
    message: 'Le décodeur ffmpeg n’a pas pu être chargé : {why}.',
    remedy: 'Rechargez la page ; si cela n’aide pas, le programme n’a pas été copié en entier.',
  },
  emptyFile: {
    message: '« {name} » est vide (zéro octet).',
    remedy: 'Copiez-le à nouveau depuis la caméra.',
  },
  noVideoTrack: {
    message: '« {name} » ne contient que du son, pas de film.',
    remedy: 'Choisissez le clip pris par la caméra.',
  },
  notFootage: {
    message:
      '{form, select, clip {« {name} » n’est pas une vidéo.} picture {« {name} » n’est pas une image d’une séquence (PNG, TIFF, BMP ou JPEG).} other {Aucun fichier n’a été indiqué.}}',
    remedy:
      '{form, select, clip {Choisissez le clip tel que la caméra l’a enregistré.} picture {Choisissez un seul clip, ou seulement des images.} other {Choisissez un clip.}}',
  },
  mixedSizes: {
    message:
      'Les images ne sont pas semblables : « {one} » a {oneSize} pixels à {oneBits} bits, « {other} » a {otherSize} à {otherBits} bits, ou le format, la couleur ou la rotation diffèrent.',
    remedy: 'Écartez les images qui ne sont pas de ce film.',
  },
  noFrame: {
    message: 'Le film n’a pas d’image {frame}.',
  },
  singleFrame: {
    message:
      '{form, select, file {« {name} » {frames, plural, =0 {ne contient aucune image} other {ne contient qu’une seule image}}.} other {Le film n’a qu’une seule image ; une vitesse en demande au moins trois avec la bille.}}',
    remedy:
      '{form, select, file {Choisissez un clip, ou toutes les images d’une séquence ensemble.} other {Choisissez le clip lui-même, pas une photo qui en est tirée.}}',
  },
  unreadable: {
    message: '« {name} » ne peut plus être lu : {why}.',
    remedy: 'Remettez le fichier en place et ouvrez-le de nouveau.',
  },
  severalClips: {
    message: 'Plusieurs clips ont été donnés ({names}) ; un seul s’ouvre à la fois.',
    remedy: 'Choisissez un clip, ou les images d’une séquence.',
  },
  severalShots: {
    message: '{files} fichiers de tir ont été donnés ; un seul s’ouvre à la fois.',
    remedy: 'Choisissez un fichier de tir, avec son enregistrement.',
  },
  decoderChosen: {
    message:
      '{form, select, browser {Ce navigateur décode lui-même {codec}.} codec {Aucun navigateur ne décode {codec} image par image.} codecIn {Aucun navigateur ne décode {codec} dans {container}.} film {Ce navigateur ne décode pas ce film {codec}.} container {Aucun navigateur ne lit {container} image par image.} raw {Le fichier n’a pas d’en-tête ; il est lu comme indiqué.} images {Les navigateurs réduisent les images à 8 bits par couleur ; ffmpeg les laisse telles quelles.} command {La ligne de commande n’a pas de navigateur pour décoder.} without {Ce navigateur n’a pas WebCodecs.} other {}}',
  },
  footageMismatch: {
    message:
      'Le fichier de tir a été établi à partir de {path}{more, plural, =0 {} one { et # autre} other { et # autres}} (SHA-256 {expected}…) ; {name}{others, plural, =0 { est un autre fichier} one { et # autre sont d’autres fichiers} other { et # autres sont d’autres fichiers}} ({found}…).',
    remedy:
      'Choisissez l’enregistrement dont il provient, ou reprenez ses données dans un nouveau tir pour cet enregistrement.',
  },
};
