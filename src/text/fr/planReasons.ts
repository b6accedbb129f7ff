import type { Catalogue } from '../catalogue';

/** What a planned shot would not show well. */
export const planReasons: Catalogue['reasons'] = {
  planInsideMuzzleZone: {
    message:
      'Le champ finit à moins de trois diamètres de bille de la bouche, où la traînée et la perte à la bouche ne peuvent être séparées.',
    remedy: 'Élargissez le champ, ou laissez-en moins avant la bouche.',
  },
  planLengthOutOfView: {
    message: 'La longueur connue ne tient pas dans le champ.',
    remedy: 'Prenez-en une plus courte, ou élargissez le champ.',
  },
  planMuzzleOutside: {
    message: 'Le plan de bouche se trouve hors du champ.',
    remedy: 'Laissez moins de place avant la bouche, ou élargissez le champ.',
  },
  planParallaxUnknown: {
    message:
      'Sans la distance de la caméra, la profondeur de la longueur connue n’entre pas dans l’incertitude.',
    remedy: 'Mesurez de l’objectif à la ligne de vol.',
  },
  noModes: {
    message: 'Aucun mode n’est indiqué.',
    remedy: 'Écrivez une ligne par mode : 12000 1024 x 256.',
  },
  planBallTooLarge: {
    message:
      'La bille, {diameter}, ne tient pas dans les {across} après la bouche sur {high} que montre l’image.',
    remedy: 'Élargissez le champ, ou utilisez plus de lignes.',
  },
  planBallTooSmall: {
    message: 'La bille mesure {across} px ; il en faut au moins {least}.',
    remedy: 'Réduisez le champ, ou utilisez plus de pixels sur sa longueur.',
  },
  planBallSmall: {
    message:
      'Le rayon de la bille est de {radius} px ; au-dessous de {small} px, son contour se distingue à peine de son flou.',
    remedy: 'Réduisez le champ, ou utilisez plus de pixels sur sa longueur.',
  },
  planExposureTooLong: {
    message: 'Le temps de pose, {exposure}, est plus long qu’une image, {interval}.',
    remedy: 'Posez moins de {interval}, ou baissez la cadence.',
  },
  planReadoutTooLong: {
    message: 'La lecture de {lines} lignes prend {readout}, plus qu’une image, {interval}.',
    remedy:
      'Vérifiez le temps de lecture par ligne, utilisez moins de lignes, ou baissez la cadence.',
  },
  planTooFast: {
    message:
      'Une bille à {speed} quitte le champ en {frames} images ; une vitesse en demande {fewest}.',
    remedy: 'Filmez à {rate} images/s ou plus, ou élargissez le champ.',
  },
  planFewFrames: {
    message:
      'Une bille à {speed} reste dans le champ pendant {frames} images : une valeur aberrante parmi si peu ne se voit pas.',
    remedy: 'Filmez à une cadence plus élevée, ou élargissez le champ.',
  },
  planLongBlur: {
    message:
      'Une bille à {speed} se déplace de {blur} fois son rayon pendant une pose : ses bords s’estompent et son centre est moins bien connu qu’attendu ici.',
    remedy: 'Posez {exposure} ou moins, avec {blur} fois la lumière.',
  },
  planNoContrast: {
    message: 'La bille se détache de {contrast} fois le bruit ; il en faut au moins {least}.',
    remedy:
      'Utilisez plus de lumière, une pose plus longue ou un fond qui diffère davantage de la bille.',
  },
  planLowContrast: {
    message:
      'La bille ne se détache que de {contrast} fois le bruit : des images peuvent être refusées.',
    remedy:
      'Utilisez plus de lumière, une pose plus longue ou un fond qui diffère davantage de la bille.',
  },
  planTooDark: {
    message: 'L’image reçoit {share} de la lumière de celle où le contraste a été relevé.',
    remedy: 'Utilisez {light} fois la lumière d’alors, ou posez plus longtemps.',
  },
  planTooBright: {
    message:
      '{form, select, may {L’image reçoit {times} fois la lumière de celle où le contraste a été relevé : la bille peut virer au blanc.} other {La bille ou le fond virent au blanc : son bord est écrêté.}}',
    remedy: 'Utilisez {light} fois la lumière d’alors.',
  },
  planTooFewFrames: {
    message:
      'Après la bouche, la bille {frames, plural, =0 {n’est visible dans aucune image} one {est visible dans # image} other {est visible dans # images}} ; une vitesse en demande au moins {fewest}.',
    remedy: 'Prévoyez une cadence plus élevée ou un champ plus large.',
  },
  cameraTooSlow: {
    message: 'La caméra ne prend pas d’images à {rate} images/s.',
    remedy: 'Vérifiez le débit de pixels ou le tableau des modes.',
  },
};
